import * as fc from "fast-check";
import { newSeed } from "./new-seed.ts";

/**
 * Holds a property to be true of so many random cases: of the same ones each run, by the seed of tests/repeatable.ts,
 * and of a fifth as many new ones. A failure names the seed and the path that bring its case back.
 */
export function holds<Values>(property: fc.IProperty<Values>, { numRuns }: { numRuns: number }): void {
  fc.assert(property, { numRuns });
  fc.assert(property, { numRuns: Math.ceil(numRuns / 5), seed: newSeed });
}
