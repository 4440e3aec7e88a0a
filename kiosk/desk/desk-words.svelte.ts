import { getContext, setContext } from "svelte";
import type { Fact } from "../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../shared/text/fill-gaps.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import { deskEn, type DeskKey } from "./desk-en.ts";
import { deskPl } from "./desk-pl.ts";

const catalogues: Record<Language, Record<DeskKey, string>> = { en: deskEn, pl: deskPl };

/** Speaks the language of whoever sits at the desk, which need not be the bench's. */
export class DeskWords {
  language = $state<Language>("en");

  t(key: DeskKey, facts: Record<string, Fact> = {}): string {
    return fillGaps(catalogues[this.language][key], (name) => facts[name]?.toString());
  }

  of(text: Text): string {
    return text[this.language];
  }

  /** A day and a time as they are written in this language, by the clock of whoever looks. */
  time(wallMs: number): string {
    const style = { dateStyle: "short", timeStyle: "short" } as const;
    return new Intl.DateTimeFormat(this.language === "en" ? "en-GB" : "pl", style).format(wallMs);
  }

  /** Minutes and seconds. */
  span(ms: number): string {
    const seconds = Math.max(0, Math.round(ms / 1000));
    return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  }
}

const words = Symbol("desk-words");
export const provideDeskWords = (made: DeskWords): DeskWords => setContext(words, made);
export const useDeskWords = (): DeskWords => getContext<DeskWords>(words);
