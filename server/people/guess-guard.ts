import type { KeptTries } from "./guess-memory.ts";

/** How fast wrong tries are forgotten, how many are free, and how long the wait grows. */
interface Patience {
  freeCount: number;
  forgetOneMs: number;
  longestWaitMs: number;
}

const patience = {
  /** One person: whoever gets it right is waited for no more. */
  person: { freeCount: 3, forgetOneMs: 600_000, longestWaitMs: 300_000 },
  /** All that comes from one place: a right one in between does not clear it, or a learner's own badge would. */
  address: { freeCount: 5, forgetOneMs: 60_000, longestWaitMs: 60_000 },
} as const satisfies Record<string, Patience>;

/** What wrong tries are counted by. */
export interface Guess {
  of: keyof typeof patience;
  name: string;
}

interface Tries {
  guess: Guess;
  level: number;
  atMs: number;
  openMs: number;
}

/** So many are kept in mind; the one that was tried longest ago is forgotten first. */
const mostKept = 2000;

/** So many of those who have to wait are kept over a restart. */
const mostRemembered = 100;

/** Where those who have to wait are kept over a restart. */
export interface TriesMemory {
  read: () => KeptTries[];
  write: (tries: readonly KeptTries[]) => void;
}

/**
 * Makes whoever guesses wait, twice as long each time, and never for ever: a person's PIN can be tried again after at
 * most five minutes. A restart makes nobody's wait shorter: it begins anew.
 */
export class GuessGuard {
  readonly #nowMs: () => number;
  readonly #memory: TriesMemory | undefined;
  readonly #tries = new Map<string, Tries>();

  /** `nowMs` is a clock that is never set back. @throws StoreError where what was kept cannot be read. */
  constructor(nowMs: () => number, memory?: TriesMemory) {
    this.#nowMs = nowMs;
    this.#memory = memory;
    const atMs = nowMs();
    for (const { of, name, level, waitMs } of memory?.read() ?? [])
      this.#tries.set(keyOf({ of, name }), { guess: { of, name }, level, atMs, openMs: atMs + waitMs });
  }

  /**
   * Somebody tries: gives how long they have to wait, in seconds, or 0, and then the try counts as wrong until it is
   * `met`. So those that come while one is worked out are counted as well.
   */
  tried(guesses: readonly Guess[]): number {
    const nowMs = this.#nowMs();
    const waitMs = Math.max(
      0,
      ...guesses.map((guess) => (this.#tries.get(keyOf(guess))?.openMs ?? 0) - nowMs),
    );
    if (waitMs > 0) return Math.ceil(waitMs / 1000);
    for (const guess of guesses) this.#count(guess, nowMs);
    if (guesses.some((guess) => isMadeToWait(this.#tries.get(keyOf(guess)), nowMs))) this.#remember();
    for (const key of this.#tries.keys()) {
      if (this.#tries.size <= mostKept) break;
      this.#tries.delete(key);
    }
    return 0;
  }

  /** It was right: the person is waited for no more, and where it came from has one wrong try less. */
  met(guesses: readonly Guess[]): void {
    const nowMs = this.#nowMs();
    let isRemembered = false;
    for (const guess of guesses) {
      const key = keyOf(guess);
      const tries = this.#tries.get(key);
      if (!tries) continue;
      isRemembered ||= isMadeToWait(tries, nowMs);
      if (guess.of === "person") this.#tries.delete(key);
      else this.#tries.set(key, { ...tries, level: Math.max(0, tries.level - 1), openMs: 0 });
    }
    if (isRemembered) this.#remember();
  }

  /** Only who was made to wait: a right PIN at the first go writes nothing. */
  #remember(): void {
    const nowMs = this.#nowMs();
    const waiting = [...this.#tries.values()].filter((tries) => isMadeToWait(tries, nowMs));
    this.#memory?.write(
      waiting.slice(-mostRemembered).map((tries) => ({
        ...tries.guess,
        level: levelOf(tries, nowMs),
        waitMs: Math.max(0, tries.openMs - nowMs),
      })),
    );
  }

  #count({ of, name }: Guess, nowMs: number): void {
    const { freeCount, longestWaitMs } = patience[of];
    const key = keyOf({ of, name });
    const before = this.#tries.get(key);
    const level = (before ? levelOf(before, nowMs) : 0) + 1;
    const waitMs = level < freeCount ? 0 : Math.min(longestWaitMs, 1000 * 2 ** (level - freeCount));
    this.#tries.delete(key);
    this.#tries.set(key, { guess: { of, name }, level, atMs: nowMs, openMs: nowMs + waitMs });
  }
}

/** How many wrong tries are not forgotten yet. */
const levelOf = ({ guess, level, atMs }: Tries, nowMs: number): number =>
  Math.max(0, level - (nowMs - atMs) / patience[guess.of].forgetOneMs);

const isMadeToWait = (tries: Tries | undefined, nowMs: number): boolean =>
  tries !== undefined && levelOf(tries, nowMs) >= patience[tries.guess.of].freeCount;

const keyOf = ({ of, name }: Guess): string => `${of} ${name}`;
