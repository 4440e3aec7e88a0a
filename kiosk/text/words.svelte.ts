import { getContext, setContext } from "svelte";
import type { Fact, Said } from "../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../shared/text/fill-gaps.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import { en, type TextKey } from "./en.ts";
import { isTextKey } from "./is-text-key.ts";
import { type LateTexts, lateText, takeLateTexts } from "./late-texts.ts";
import { numberIn } from "./number-in.ts";

type Catalogue = Record<TextKey, string>;

/** English is always there; another language comes when it is first asked for. */
let catalogues = $state.raw<{ en: Catalogue } & Partial<Record<Language, Catalogue>>>({ en });

const fetchers: Record<Exclude<Language, "en">, () => Promise<Catalogue>> = {
  pl: () => import("./pl.ts").then(({ pl }) => pl),
};

/** Brings a language onto the screen; until it is there texts are English. */
export const bringLanguage = async (language: Language): Promise<void> => {
  if (language === "en" || catalogues[language]) return;
  catalogues = { ...catalogues, [language]: await fetchers[language]() };
};

const textIn = (language: Language, key: string): string =>
  isTextKey(key) ? (catalogues[language] ?? catalogues.en)[key] : (lateText(language, key) ?? key);

/**
 * Speaks the language of the bench: the texts that are always there and, in a screen that is loaded when it is opened,
 * `LateKey`s of its own. `lengthen` stretches every text, to see whether the screen can take it.
 */
export class Words<LateKey extends string = never> {
  language = $state<Language>("en");
  /** Turns the id of a station, entry, contact or cable in a fact into its name. */
  nameOf: (fact: string) => string = (fact) => fact;
  readonly #lengthen: (text: string) => string;

  constructor(lengthen: (text: string) => string = (text) => text) {
    this.#lengthen = lengthen;
  }

  number(n: number): string {
    return numberIn(this.language, n);
  }

  /** A text of the catalogue with its gaps filled. */
  t(key: TextKey | LateKey, facts: Record<string, Fact> = {}): string {
    const text = this.#lengthen(textIn(this.language, key));
    return fillGaps(text, (name) => this.#fact(facts[name]));
  }

  /** A sentence the server asked for; `otherwise` where this screen's catalogue has no such key. */
  said({ key, facts }: Said, otherwise: TextKey): string {
    return isTextKey(key) ? this.t(key, facts) : this.t(otherwise, { ...facts, code: key });
  }

  /** A text that comes in every language, such as a scenario's title. */
  of(text: Text): string {
    return this.#lengthen(text[this.language]);
  }

  #fact(fact: Fact | undefined): string | undefined {
    if (fact === undefined) return undefined;
    if (typeof fact === "number") return this.number(fact);
    if (typeof fact === "boolean") return textIn(this.language, fact ? "setting.yes" : "setting.no");
    return this.nameOf(fact);
  }
}

const words = Symbol("words");
export const provideWords = (made: Words): Words => setContext(words, made);

/** The words of the bench, with the texts that come with a late screen where those are given. */
export const useWords = <LateKey extends string = never>(texts?: LateTexts<LateKey>): Words<LateKey> => {
  if (texts) takeLateTexts(texts);
  return getContext<Words<LateKey>>(words);
};
