import { getContext, setContext } from "svelte";
import type { Language } from "../../shared/text/languages.ts";
import { spokenText } from "./spoken-text.ts";

/** The tongue as it is written for voices: the words of the trade are those of the United Kingdom. */
const tongues: Record<Language, string> = { en: "en-GB", pl: "pl-PL" };

/** Reads aloud where the browser has a voice of its own for the language: texts never leave the bench for it. */
export class Speaker {
  isSpeaking = $state(false);
  #voices = $state.raw<readonly SpeechSynthesisVoice[]>([]);
  /** Counts what was begun: what an earlier reading still reports is none of the later one's. */
  #begun = 0;
  readonly #speech: SpeechSynthesis | undefined =
    "speechSynthesis" in window ? window.speechSynthesis : undefined;

  /** Takes note of the voices, which a browser brings after the page. Gives what ends that. */
  listen(): () => void {
    const look = () => (this.#voices = this.#speech?.getVoices() ?? []);
    look();
    this.#speech?.addEventListener("voiceschanged", look);
    return () => {
      this.#speech?.removeEventListener("voiceschanged", look);
      this.stop();
    };
  }

  /** True where there is a voice for a language. */
  canSpeak(language: Language): boolean {
    return this.#voiceFor(language) !== undefined;
  }

  /** Says one sentence after the other; what was being said is broken off. */
  speak(sentences: readonly string[], language: Language): void {
    this.stop();
    const voice = this.#voiceFor(language);
    if (!this.#speech || !voice || sentences.length === 0) return;
    this.#begun += 1;
    const turn = this.#begun;
    const ended = () => {
      if (turn === this.#begun) this.isSpeaking = false;
    };
    this.isSpeaking = true;
    for (const [i, sentence] of sentences.entries()) {
      const utterance = new SpeechSynthesisUtterance(spokenText(sentence, language));
      utterance.lang = tongues[language];
      utterance.voice = voice;
      utterance.onerror = ended;
      if (i === sentences.length - 1) utterance.onend = ended;
      this.#speech.speak(utterance);
    }
  }

  stop(): void {
    this.#begun += 1;
    this.isSpeaking = false;
    this.#speech?.cancel();
  }

  #voiceFor(language: Language): SpeechSynthesisVoice | undefined {
    const own = this.#voices.filter(
      ({ lang, localService }) => localService && lang.toLowerCase().startsWith(language),
    );
    return own.find(({ lang }) => lang.replace("_", "-") === tongues[language]) ?? own[0];
  }
}

const speaker = Symbol("speaker");
export const provideSpeaker = (made: Speaker): Speaker => setContext(speaker, made);
export const useSpeaker = (): Speaker => getContext<Speaker>(speaker);
