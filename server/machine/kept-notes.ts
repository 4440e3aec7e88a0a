/** A sentence that the program said to the journal, and when. */
export interface KeptNote {
  wallMs: number;
  sentence: string;
}

const mostKept = 100;
const longestSentence = 2000;

/** Hands on what the program says, and keeps the last of it for whoever helps from afar. */
export class KeptNotes {
  readonly #handOn: (sentence: string) => void;
  readonly #wallMs: () => number;
  #kept: readonly KeptNote[] = [];

  constructor(handOn: (sentence: string) => void, wallMs: () => number) {
    this.#handOn = handOn;
    this.#wallMs = wallMs;
  }

  readonly note = (sentence: string): void => {
    this.#handOn(sentence);
    const note = { wallMs: this.#wallMs(), sentence: sentence.slice(0, longestSentence) };
    this.#kept = [...this.#kept, note].slice(-mostKept);
  };

  /** The last sentences, the newest at the end. */
  get kept(): readonly KeptNote[] {
    return this.#kept;
  }
}
