import { getContext, setContext } from "svelte";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";
import { type Language, languages } from "../../../shared/text/languages.ts";
import type { Text } from "../../../shared/text/text.schema.ts";
import type { DeskWords } from "../desk-words.svelte.ts";
import { authorEn, type AuthorKey } from "./author-en.ts";
import { authorPl } from "./author-pl.ts";

const catalogues: Record<Language, Record<AuthorKey, string>> = { en: authorEn, pl: authorPl };

/** Speaks of tasks that are being made, in the language of whoever sits at the desk. */
export class AuthorWords {
  readonly #desk: DeskWords;

  constructor(desk: DeskWords) {
    this.#desk = desk;
  }

  get language(): Language {
    return this.#desk.language;
  }

  t(key: AuthorKey, facts: Record<string, Fact> = {}): string {
    return fillGaps(catalogues[this.language][key], (name) => facts[name]?.toString());
  }

  /** A text in every language of the bench. */
  texts(key: AuthorKey, facts: Record<string, Fact> = {}): Text {
    const [en = "", pl = ""] = languages.map((language) =>
      fillGaps(catalogues[language][key], (name) => facts[name]?.toString()),
    );
    return { en, pl };
  }
}

const words = Symbol("author-words");
export const provideAuthorWords = (made: AuthorWords): AuthorWords => setContext(words, made);
export const useAuthorWords = (): AuthorWords => getContext<AuthorWords>(words);
