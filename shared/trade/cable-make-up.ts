import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 6004",
  clause: "flat twin-and-earth; R1+R2 from On-Site Guide Table I1",
  checked: "secondary copy",
};

/** Flat twin-and-earth as made: the protective conductor that comes with each size, and R1 + R2 at 20 °C. */
export const cableMakeUp: readonly {
  csaMm2: number;
  cpcCsaMm2: number;
  r1PlusR2MilliohmPerM: number;
  source: Source;
}[] = [
  { csaMm2: 1.0, cpcCsaMm2: 1.0, r1PlusR2MilliohmPerM: 36.2, source },
  { csaMm2: 1.5, cpcCsaMm2: 1.0, r1PlusR2MilliohmPerM: 30.2, source },
  { csaMm2: 2.5, cpcCsaMm2: 1.5, r1PlusR2MilliohmPerM: 19.51, source },
  { csaMm2: 4, cpcCsaMm2: 1.5, r1PlusR2MilliohmPerM: 16.71, source },
  { csaMm2: 6, cpcCsaMm2: 2.5, r1PlusR2MilliohmPerM: 10.49, source },
  { csaMm2: 10, cpcCsaMm2: 4, r1PlusR2MilliohmPerM: 6.44, source },
  { csaMm2: 16, cpcCsaMm2: 6, r1PlusR2MilliohmPerM: 4.23, source },
];
