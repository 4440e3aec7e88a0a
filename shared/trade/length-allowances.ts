import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };

/** What is added to the way along the walls to get the length of a cable. */
export const lengthAllowances = sourced({
  /** From the height of the run to the accessory: a socket outlet off the floor, a switch off the ceiling. */
  accessoryDropM: [0.5, practice],
  switchDropM: [1.2, practice],
  wiringAllowanceFraction: [0.1, practice],
});
