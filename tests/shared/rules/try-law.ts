import { randomShare } from "../../breadth.ts";
import { newSeed } from "../../new-seed.ts";
import { seeded } from "../../seeded.ts";

/**
 * Four of five cases are the same each run, the fifth is new. A deep run takes more than its share: at TEST_DEPTH=10
 * the laws together see more than 100,000 wirings.
 */
export const wiringsALaw = Math.round(500 * randomShare ** 1.55);
const fixedShare = 0.8;

/** Tries a law on as many wirings; what breaks it comes with the seed that brings it back. At most three. */
export function breaks(law: (random: () => number) => string[]): string[] {
  const broken: string[] = [];
  for (let index = 0; index < wiringsALaw && broken.length < 3; index++) {
    const seed = index < wiringsALaw * fixedShare ? index : (newSeed + index) >>> 0;
    for (const line of law(seeded(seed))) broken.push(`seed ${seed}: ${line}`);
  }
  return broken;
}

export const pick = <T>(random: () => number, values: readonly T[]): T =>
  values[Math.floor(random() * values.length)]!;
