import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };
const making: Source = {
  kind: "standard",
  document: "BS EN 60898-1",
  clause: "rated short-circuit capacity, as domestic devices are usually marked",
  checked: "from memory",
};

/** What the simulated live tests show of a healthy device, the same every time. */
export const simulatedLive = sourced({
  /** A sound RCD of the general type at its rated residual current, and at five times that. */
  rcdOneMs: [28, practice],
  rcdFiveMs: [12, practice],
  /** A fault current above this is more than the usual device can break. */
  mostFaultA: [6000, making],
});
