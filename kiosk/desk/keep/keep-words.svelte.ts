import { getContext, setContext } from "svelte";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";
import type { Language } from "../../../shared/text/languages.ts";
import type { DeskWords } from "../desk-words.svelte.ts";
import { keepEn, type KeepKey } from "./keep-en.ts";
import { keepPl } from "./keep-pl.ts";

const catalogues: Record<Language, Record<KeepKey, string>> = { en: keepEn, pl: keepPl };

/** Speaks of what keeps a bench and its people, in the language of whoever sits at the desk. */
export class KeepWords {
  readonly #desk: DeskWords;

  constructor(desk: DeskWords) {
    this.#desk = desk;
  }

  get language(): Language {
    return this.#desk.language;
  }

  t(key: KeepKey, facts: Record<string, Fact> = {}): string {
    return fillGaps(catalogues[this.language][key], (name) => facts[name]?.toString());
  }

  /** Why something was not begun: in words, by the bench's own word for it. */
  refused(why: string): string {
    const key = `refused.${why}`;
    return this.t(Object.hasOwn(keepEn, key) ? (key as KeepKey) : "keep.no-answer");
  }

  time(wallMs: number): string {
    return this.#desk.time(wallMs);
  }

  day(wallMs: number): string {
    return new Intl.DateTimeFormat(this.#locale, { dateStyle: "medium" }).format(wallMs);
  }

  number(value: number, digits = 1): string {
    return new Intl.NumberFormat(this.#locale, { maximumFractionDigits: digits }).format(value);
  }

  /** An amount of data in units of thousands, as disks are sold. */
  bytes(bytes: number): string {
    const units = ["B", "kB", "MB", "GB", "TB"];
    let value = bytes;
    while (value >= 1000 && units.length > 1) {
      value /= 1000;
      units.shift();
    }
    return `${this.number(value)} ${units[0]}`;
  }

  /** Days, hours and minutes. */
  span(ms: number): string {
    const minutes = Math.floor(ms / 60_000);
    const facts = {
      days: Math.floor(minutes / 1440),
      hours: Math.floor(minutes / 60) % 24,
      minutes: minutes % 60,
    };
    return this.t(facts.days > 0 ? "keep.days" : "keep.hours", facts);
  }

  get #locale(): string {
    return this.language === "en" ? "en-GB" : "pl";
  }
}

const words = Symbol("keep-words");
export const provideKeepWords = (made: KeepWords): KeepWords => setContext(words, made);
export const useKeepWords = (): KeepWords => getContext<KeepWords>(words);
