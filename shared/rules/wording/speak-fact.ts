import { unitOfName } from "../../trade/unit-of-name.ts";
import type { FactValue } from "../rule.ts";
import type { Grammar, Terms } from "./catalogue.ts";
import type { Namer } from "./name-place.ts";

/**
 * A fact in words: a number with the unit its name ends in, an id as the name of what it is the id of, a list joined
 * by "and", of which so many are named at most and the rest counted.
 */
export function speakFact(
  name: string,
  value: FactValue,
  grammar: Grammar,
  terms: Terms,
  nameOf: Namer,
  mostNamed = Infinity,
): string {
  if (typeof value === "number") return speakNumber(name, value, terms);
  if (typeof value === "boolean") return value ? terms.yes : terms.no;
  if (typeof value === "string") return speakText(value, grammar, terms, nameOf);
  const items = value.map((item) => speakText(item, grammar, terms, nameOf));
  return speakList(shortened(items, mostNamed, terms.more), terms.and);
}

/** So many of a list, the rest counted; one more is named and not counted. */
export const shortened = (items: readonly string[], most: number, more: Terms["more"]): readonly string[] =>
  items.length > most + 1 ? [...items.slice(0, most), more(items.length - most)] : items;

/** "a, b and c". */
export function speakList(items: readonly string[], joint: string): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} ${joint} ${last}`;
}

/** A number to two decimals with the unit that its name ends in, such as "13.5 A". */
export function speakNumber(name: string, value: number, terms: Terms): string {
  if (!Number.isFinite(value)) return "∞";
  const text = String(Math.round(value * 100) / 100).replace(".", terms.decimalMark);
  const unit = name.endsWith("Percent") ? "%" : unitOfName(name).unit;
  return unit === "" ? text : `${text} ${unit}`;
}

function speakText(text: string, grammar: Grammar, terms: Terms, nameOf: Namer): string {
  const forms =
    nameOf(text) ??
    own(terms.roles, text) ??
    own(terms.values, text) ??
    own(terms.appliances, text) ??
    own(terms.kinds, text);
  return forms ? forms[grammar] : text;
}

function own<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
