import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const lampholder: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "559.5.1.204",
  checked: "secondary copy",
};
const guide: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Appendix H",
  checked: "secondary copy",
};
/** As printed in https://www.scribd.com/document/431807920/IEEE */
const lamps: Source = { ...guide, clause: "Table A1, lampholders" };
const practice: Source = { kind: "common practice, no source" };

/** What a lighting circuit may be. */
export const lightingLimits = sourced({
  /** B15, B22, E14 and E27 lampholders. */
  mostDeviceA: [16, lampholder],
  usualDeviceA: [6, guide],
  usualLargeDeviceA: [10, guide],
  /** Where no load is stated: at least this at every lampholder. */
  assumedLampW: [100, lamps],
  /** More points than about a dozen on 6 A are queried even though their load fits. */
  usualPointsOnSixAmp: [12, practice],
});
