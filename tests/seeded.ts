/** Repeatable numbers in [0, 1) from a seed. */
export { numbersOf as seeded } from "../shared/scenario/exercise/draw.ts";
