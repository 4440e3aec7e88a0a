import { onTestFinished } from "vitest";

/** What was given to a voice. */
interface Spoken {
  text: string;
  lang: string;
  voice: string;
}

type Voice = Pick<SpeechSynthesisVoice, "lang" | "localService" | "name">;

class UtteranceDouble {
  lang = "";
  voice: Voice | null = null;
  onend: (() => void) | null = null;
  onerror: (() => void) | null = null;
  constructor(readonly text: string) {}
}

/**
 * Stands in for the Web Speech API, with voices of its own: a Chromium of the checks has none. It says one sentence at
 * a time, the next one when `finish` is called.
 */
export class SpeechDouble extends EventTarget {
  readonly spoken: Spoken[] = [];
  #waiting: UtteranceDouble[] = [];
  #voices: Voice[];

  constructor(voices: Voice[] = [local("en-US"), local("en-GB"), local("pl-PL")]) {
    super();
    this.#voices = voices;
  }

  getVoices(): Voice[] {
    return this.#voices;
  }

  /** Voices that come after the page. */
  bring(voices: Voice[]): void {
    this.#voices = voices;
    this.dispatchEvent(new Event("voiceschanged"));
  }

  speak(utterance: UtteranceDouble): void {
    this.#waiting.push(utterance);
    const { text, lang, voice } = utterance;
    this.spoken.push({ text, lang, voice: voice?.lang ?? "" });
  }

  cancel(): void {
    const broken = this.#waiting;
    this.#waiting = [];
    for (const { onerror } of broken) onerror?.();
  }

  finish(): void {
    const done = this.#waiting;
    this.#waiting = [];
    for (const { onend } of done) onend?.();
  }
}

export const local = (lang: string): Voice => ({ lang, localService: true, name: lang });

/** Puts a double in place of what the browser has, for the screens that are put up from now on in this test. */
export const putInPlace = (double: SpeechDouble): SpeechDouble => {
  const doubles = { speechSynthesis: double, SpeechSynthesisUtterance: UtteranceDouble };
  for (const [name, value] of Object.entries(doubles)) {
    const own = Object.getOwnPropertyDescriptor(window, name);
    Object.defineProperty(window, name, { value, configurable: true });
    onTestFinished(() => {
      if (own) Object.defineProperty(window, name, own);
      else Reflect.deleteProperty(window, name);
    });
  }
  return double;
};
