import { describe, expect, it } from "vitest";
import { GuessGuard } from "../../../server/people/guess-guard.ts";
import { isEasyPin, PinHasher } from "../../../server/people/pin-hash.ts";
import { seal, unseal } from "../../../server/people/sealed-person.ts";
import { newKey } from "../../../server/people/secrets.ts";

describe("a PIN", () => {
  it("is kept as argon2id with 19 MiB, two passes and a salt of its own", async () => {
    // OWASP Password Storage Cheat Sheet: Argon2id, m=19456 (19 MiB), t=2, p=1.
    const pins = new PinHasher();
    const [one, two] = await Promise.all([pins.hash("482915"), pins.hash("482915")]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[^$]+\$[^$]+$/);
    expect(one).not.toBe(two);
    expect(await pins.matches(one, "482915")).toBe(true);
    expect(await pins.matches(one, "482916")).toBe(false);
    expect(await pins.matches(undefined, "a stranger")).toBe(false);
  });

  it("is worked out one at a time, and more than eight are turned away", async () => {
    const pins = new PinHasher();
    const tried = await Promise.allSettled(Array.from({ length: 12 }, () => pins.hash("482915")));
    expect(tried.filter(({ status }) => status === "fulfilled")).toHaveLength(8);
    expect(tried.at(-1)).toMatchObject({ reason: { code: "too-many-pins" } });
    expect(await pins.hash("482915")).toContain("argon2id");
  });

  it.each([
    { pin: "000000", isEasy: true },
    { pin: "123456", isEasy: true },
    { pin: "987654", isEasy: true },
    { pin: "482915", isEasy: false },
    { pin: "135791", isEasy: false },
    { pin: "246802", isEasy: false },
  ])("$pin is easy: $isEasy", ({ pin, isEasy }) => expect(isEasyPin(pin)).toBe(isEasy));
});

describe("a badge", () => {
  it("is looked up by argon2id of its code with 19 MiB and two passes, under the salt of its bench", async () => {
    const pins = new PinHasher();
    const salt = newKey();
    const mark = await pins.badgeMark("L-12", salt);
    // As the PHC string format writes an argon2id hash: what is marked is a hash of the usual cost, and of this code.
    const base64 = (bytes: Buffer): string => bytes.toString("base64").replaceAll("=", "");
    const asPin = `$argon2id$v=19$m=19456,t=2,p=1$${base64(salt)}$${base64(mark)}`;
    expect(await pins.matches(asPin, "L-12")).toBe(true);
    expect(await pins.matches(asPin, "L-13")).toBe(false);
    expect((await pins.badgeMark("L-12", salt)).equals(mark)).toBe(true);
    expect((await pins.badgeMark("L-12", newKey())).equals(mark)).toBe(false);
  });
});

describe("whoever guesses", () => {
  const from = (name: string) => [{ of: "address" as const, name }];
  const ofPerson = [{ of: "person" as const, name: "ida" }];

  it("waits twice as long each time, up to a minute from one place and five for one person, never for ever", () => {
    let nowMs = 0;
    const guard = new GuessGuard(() => nowMs);
    const waits = (guesses: typeof ofPerson | ReturnType<typeof from>): number[] => {
      const seen: number[] = [];
      for (let count = 0; count < 14; count += 1) {
        expect(guard.tried(guesses)).toBe(0);
        const waitS = guard.tried(guesses);
        seen.push(waitS);
        nowMs += waitS * 1000;
      }
      return seen;
    };
    const person = waits(ofPerson).filter((waitS) => waitS > 0);
    expect(person.slice(0, 5)).toEqual([1, 2, 4, 8, 16]);
    expect(person).toEqual([...person].sort((a, b) => a - b));
    expect(person.slice(-3)).toEqual([300, 300, 300]);
    const place = waits(from("own screen"));
    expect(place.slice(0, 4)).toEqual([0, 0, 1, 2]);
    expect(Math.max(...place)).toBe(60);
    nowMs += 20 * 60_000;
    expect(guard.tried(from("own screen"))).toBe(0);
    expect(guard.tried(from("own screen"))).toBe(0);
  });

  it("gets 3,000 tries in four seconds down to a handful, also with a badge of their own in between", () => {
    let nowMs = 0;
    const guard = new GuessGuard(() => nowMs);
    let tried = 0;
    for (let count = 0; count < 3000; count += 1, nowMs += 4 / 3) {
      if (guard.tried(from("own screen")) === 0) tried += 1;
      // Their own badge, whenever it is let through.
      if (guard.tried(from("own screen")) === 0) guard.met(from("own screen"));
    }
    expect(tried).toBeLessThan(12);
  });

  it("from another place, or of another person, is not made to wait for them", () => {
    const guard = new GuessGuard(() => 0);
    for (let count = 0; count < 20; count += 1)
      [from("192.0.2.7"), ofPerson].map((guesses) => guard.tried(guesses));
    expect(guard.tried(from("192.0.2.7"))).toBeGreaterThan(0);
    expect(guard.tried(from("192.0.2.8"))).toBe(0);
    expect(guard.tried([{ of: "person", name: "olwen" }])).toBe(0);
  });

  it("is forgotten where more than two thousand others have tried since: memory does not grow", () => {
    const guard = new GuessGuard(() => 0);
    for (let count = 0; count < 6; count += 1) guard.tried(from("first"));
    expect(guard.tried(from("first"))).toBeGreaterThan(0);
    for (let other = 0; other < 2000; other += 1) guard.tried(from(`other ${other}`));
    expect(guard.tried(from("first"))).toBe(0);
  });
});

describe("what is sealed of a person", () => {
  const told = { name: "Ida Nowak", centreNumber: "T-117" };

  it("is read with their key alone, in their row alone, and shows any byte that was changed", () => {
    const key = newKey();
    const sealed = seal("person-1", told, key);
    expect(sealed.includes(Buffer.from("Nowak"))).toBe(false);
    expect(unseal("person-1", sealed, key)).toEqual(told);
    expect(unseal("person-1", sealed, newKey())).toBeUndefined();
    expect(unseal("person-2", sealed, key)).toBeUndefined();
    for (let at = 0; at < sealed.length; at += 1) {
      const changed = Buffer.from(sealed);
      changed[at] = (changed[at] ?? 0) ^ 1;
      expect(unseal("person-1", changed, key)).toBeUndefined();
    }
    expect(unseal("person-1", sealed.subarray(0, 20), key)).toBeUndefined();
    expect(seal("person-1", told, key).equals(sealed)).toBe(false);
  });
});
