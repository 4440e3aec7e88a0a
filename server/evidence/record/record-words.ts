import { type Namer, namerOf } from "../../../shared/rules/wording/name-place.ts";
import { wordings } from "../../../shared/rules/wording/languages.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";
import type { Language } from "../../../shared/text/languages.ts";
import { stationNames } from "../../attempt/station-names.ts";
import type { SettingKey } from "../../../shared/protocol/attempt-words.ts";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import type { AttemptEvidence } from "../attempt-evidence.ts";
import { recordEn, type RecordKey } from "./record-en.ts";
import { recordPl } from "./record-pl.ts";

const catalogues: Record<Language, Record<RecordKey, string>> = { en: recordEn, pl: recordPl };

/** Speaks the language of a record on paper. */
export class RecordWords {
  readonly language: Language;
  readonly #namer: Namer;

  constructor(language: Language, { wiring, view }: Pick<AttemptEvidence, "wiring" | "view">) {
    this.language = language;
    this.#namer = namerOf(wiring, wordings[language].terms, stationNames(view.scenario, language));
  }

  t(key: RecordKey, facts: Record<string, string | number> = {}): string {
    return fillGaps(catalogues[this.language][key], (name) => facts[name]?.toString());
  }

  /** The words of a key that is made up of a group and a name; the name itself where there are none. */
  named(group: string, name: string): string {
    const key = `${group}.${name}`;
    return Object.hasOwn(recordEn, key) ? this.t(key as RecordKey) : name;
  }

  /** A station, entry, contact or cable by name. */
  place(id: string): string {
    return this.#namer(id)?.nom ?? id;
  }

  /** What is set at a station. */
  setting(key: SettingKey, value: Fact): string {
    const unit =
      typeof value === "number"
        ? ({ csaMm2: " mm²", deviceCurve: "", switched: "" }[key as string] ?? " A")
        : "";
    const told = typeof value === "boolean" ? this.t(value ? "yes" : "no") : value;
    return `${this.t(`setting.${key}`)}: ${typeof told === "number" ? this.number(told) : told}${unit}`;
  }

  /** A number with so many decimals at most. */
  number(n: number, decimals = 2): string {
    return this.#written(n, 0, decimals);
  }

  /** A number as the meter shows it: so many decimals, none dropped. */
  shown(n: number, decimals: number): string {
    return this.#written(n, decimals, decimals);
  }

  #written(n: number, minimumFractionDigits: number, maximumFractionDigits: number): string {
    const style = { minimumFractionDigits, maximumFractionDigits, useGrouping: false };
    return new Intl.NumberFormat(this.language === "en" ? "en-GB" : "pl", style).format(n);
  }

  /** A time in UTC, as it is read anywhere. */
  time(wallMs: number | null): string {
    return wallMs === null ? "–" : `${new Date(wallMs).toISOString().slice(0, 19).replace("T", " ")} UTC`;
  }
}
