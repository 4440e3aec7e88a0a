import { getContext, setContext } from "svelte";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";
import type { Language } from "../../../shared/text/languages.ts";
import type { DeskWords } from "../desk-words.svelte.ts";
import { leadEn, type LeadKey } from "./lead-en.ts";
import { leadPl } from "./lead-pl.ts";

const catalogues: Record<Language, Record<LeadKey, string>> = { en: leadEn, pl: leadPl };

/** Speaks of a workshop that is led, in the language of whoever sits at the desk. */
export class LeadWords {
  /** What the whole desk says. */
  readonly desk: DeskWords;

  constructor(desk: DeskWords) {
    this.desk = desk;
  }

  t(key: LeadKey, facts: Record<string, Fact> = {}): string {
    return fillGaps(catalogues[this.desk.language][key], (name) => facts[name]?.toString());
  }
}

const words = Symbol("lead-words");
export const provideLeadWords = (made: LeadWords): LeadWords => setContext(words, made);
export const useLeadWords = (): LeadWords => getContext<LeadWords>(words);
