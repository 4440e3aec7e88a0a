import { randomInt } from "node:crypto";

/**
 * Argon2id with 19 MiB, two passes and one lane: the least that the OWASP Password Storage Cheat Sheet names, and
 * some 0.2 s on a Pi 4 (RFC 9106 is what argon2id is).
 */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;
const argon2id = 2;

const badgeMarkBytes = 32;

/** So many may wait for the one that is worked out; more are turned away, for each takes 19 MiB. */
const mostWaiting = 8;

/** Too many PINs wait already. */
export class TooManyPinsError extends Error {
  readonly code = "too-many-pins";
}

/** Works PINs out one after another, in a thread of the library, so that the bench goes on meanwhile. */
export class PinHasher {
  #tail: Promise<unknown> = Promise.resolve();
  #waitingCount = 0;
  #stranger: Promise<string> | undefined;

  /** The hash a PIN is kept as, its salt and cost with it. @throws TooManyPinsError */
  hash(pin: string): Promise<string> {
    return this.#inTurn(async () => {
      const { hash } = await import("@node-rs/argon2");
      return hash(pin, { ...cost, algorithm: argon2id });
    });
  }

  /** True where a PIN is the one of a hash. It takes as long where there is none. @throws TooManyPinsError */
  async matches(kept: string | undefined, pin: string): Promise<boolean> {
    this.#stranger ??= this.hash("a stranger");
    const against = kept ?? (await this.#stranger);
    const isSame = await this.#inTurn(async () => {
      const { verify } = await import("@node-rs/argon2");
      return verify(against, pin);
    });
    return isSame && kept !== undefined;
  }

  /**
   * What a badge is looked up by: argon2id of its code under the salt of this bench, 32 bytes. A badge must be found by
   * its code alone, so all badges of a bench have one salt.
   *
   * @throws TooManyPinsError
   */
  badgeMark(badge: string, salt: Uint8Array): Promise<Buffer> {
    return this.#inTurn(async () => {
      const { hashRaw } = await import("@node-rs/argon2");
      return hashRaw(badge, { ...cost, algorithm: argon2id, salt, outputLen: badgeMarkBytes });
    });
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (this.#waitingCount >= mostWaiting) return Promise.reject(new TooManyPinsError());
    this.#waitingCount += 1;
    const turn = this.#tail.then(work).finally(() => (this.#waitingCount -= 1));
    this.#tail = turn.catch(() => undefined);
    return turn;
  }
}

const newPinDigits = 8;

/** A random PIN that is not an easy one. */
export function newPin(): string {
  const pin = Array.from({ length: newPinDigits }, () => randomInt(10)).join("");
  return isEasyPin(pin) ? newPin() : pin;
}

/** One digit all along, or digits that count up or down: what is tried first. */
export function isEasyPin(pin: string): boolean {
  const steps = new Set([...pin].slice(1).map((digit, index) => Number(digit) - Number(pin[index])));
  const [step] = steps;
  return steps.size === 1 && Math.abs(step ?? 2) <= 1;
}
