import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS EN 60228",
  clause: "plain copper, maximum at 20 °C (On-Site Guide Table I1)",
  checked: "secondary copy",
};

/**
 * Conductor resistance at 20 °C. 0.5 and 0.75 mm² are the sizes of flexes; their row is the one for plain
 * solid or stranded conductors, and a finely stranded flex may be some 8 % higher.
 */
export const copperResistance: readonly { csaMm2: number; resistanceMilliohmPerM: number; source: Source }[] =
  [
    { csaMm2: 0.5, resistanceMilliohmPerM: 36.0, source },
    { csaMm2: 0.75, resistanceMilliohmPerM: 24.5, source },
    { csaMm2: 1.0, resistanceMilliohmPerM: 18.1, source },
    { csaMm2: 1.5, resistanceMilliohmPerM: 12.1, source },
    { csaMm2: 2.5, resistanceMilliohmPerM: 7.41, source },
    { csaMm2: 4, resistanceMilliohmPerM: 4.61, source },
    { csaMm2: 6, resistanceMilliohmPerM: 3.08, source },
    { csaMm2: 10, resistanceMilliohmPerM: 1.83, source },
    { csaMm2: 16, resistanceMilliohmPerM: 1.15, source },
  ];
