import { assumptions } from "../trade/assumptions.ts";
import { lightingLimits } from "../trade/lighting-limits.ts";
import type { Source } from "../trade/source.ts";
import type { Earthing, ReferenceMethod, Station } from "../wiring/wiring.schema.ts";

const source: Source = { kind: "common practice, no source" };

/**
 * What is taken where a wiring does not say, with the reason. Anything that is not here is never assumed: a rule
 * that needs it answers `undetermined`. Floor area, litres and maker's data have no default and are not judged.
 */
export const defaults = {
  earthing: "TN-C-S" as Earthing,
  zeOhm: { "TN-C-S": assumptions.zeOhm, "TN-S": assumptions.zeTnSOhm, TT: 0 } as Record<Earthing, number>,
  rcdMa: 30,
  method: "C" as ReferenceMethod,
  ambientC: 30,
  groupedCircuits: 1,
  insulationMm: 0,
  lampW: lightingLimits.assumedLampW,
  isFcuSwitched: false,
  reasons: {
    earthing: "Most dwellings are supplied so, and the training boards state it where it differs.",
    zeOhm:
      "The most a distributor declares, 0.35 ohm for TN-C-S and 0.8 ohm for TN-S, so a limit met with it is met with less; on TT the electrode counts instead.",
    rcdMa: "A consumer unit of today covers every way; a task about a missing one says 0.",
    method: "Clipped direct is what a learner sees on a wall; a plan states any other way of running.",
    ambientC: "The temperature the capacity tables are made for.",
    groupedCircuits: "Cables that lie apart; a plan states where they run together.",
    insulationMm: "No insulation round the cable; a plan states where there is.",
    lampW: "What is assumed for each lampholder where no lamp is stated.",
    isFcuSwitched: "A unit without a switch is the one that isolates least, so nothing is taken for granted.",
  },
  source,
} as const;

/** True where a connection unit has a switch, as stated or by default. */
export const isSwitchedFcu = (station: Station): boolean =>
  station.settings?.switched ?? defaults.isFcuSwitched;
