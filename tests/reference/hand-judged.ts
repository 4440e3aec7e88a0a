import type { RuleId, Weight } from "../../shared/rules/rule.ts";
import { load } from "../shared/rules/table.ts";
import type { Extras } from "../shared/rules/wire.ts";

/** A wiring with the verdict reached by hand, from the text of the clause or the handbook, before it was judged. */
export interface HandJudged {
  /** The wiring as a claim, and why in one line. */
  title: string;
  why: string;
  lines: string[];
  extras?: Extras;
  /** Weight, rule and a place of each finding; none where it is right. */
  gives: `${Weight} ${RuleId} ${string}`[];
}

const ring = (lengthM: number, csaMm2 = 2.5): string[] => [
  `way-1.a socket-1.a ${csaMm2} ${lengthM}m`,
  `socket-1.b socket-2.a ${csaMm2} ${lengthM}m`,
  `socket-2.b socket-3.a ${csaMm2} ${lengthM}m`,
  `socket-3.b way-1.b ${csaMm2} ${lengthM}m`,
];

const radial = (pointCount: number, csaMm2: number, lengthM: number, method = "C"): string[] =>
  Array.from({ length: pointCount }, (_, index) => {
    const from = index === 0 ? "way-1.a" : `socket-${index}.b`;
    return `${from} socket-${index + 1}.a ${csaMm2} ${lengthM}m method-${method}`;
  });

const breaker = (deviceCurve: "B" | "C", deviceRatingA: number, rcdMa = 30) =>
  ({ deviceStandard: "BS EN 60898", deviceCurve, deviceRatingA, rcdMa }) as const;
const fuse = (deviceStandard: "BS 3036" | "BS 88-3", deviceRatingA: number) =>
  ({ deviceStandard, deviceRatingA }) as const;

const control = { ratingA: 45, distanceToApplianceM: 1.5 };
const doublePole = (ratingA: number) => ({ ratingA, poles: 2 }) as const;
const shower = { appliance: "shower", inBathroom: true } as const;

// Volts by hand from 17.8, 11.1 and 7.4 mV/A/m for 2.5, 4 and 6 mm² (2 x BS EN 60228 x 1.2); Zs from 0.35 Ω and 23.4,
// 20.1 and 43.4 mΩ/m for 2.5/1.5, 4/1.5 and 1.0/1.0 mm² hot; limits from BS 7671 Tables 41.2 to 41.4, 525, Appendix 4.
export const handJudged: HandJudged[] = [
  {
    title: "a ring in 4 mm² with a spur of 2.5 mm² to one twin",
    why: "433.1.204 sets a least size, not a most; Appendix 15 lets one twin hang on 2.5 mm²",
    lines: [...ring(8, 4), "socket-1.c socket-4.a 2.5 4m"],
    gives: [],
  },
  {
    title: "a fused spur of 13 A with two socket outlets on 1.5 mm²",
    why: "behind the fuse any number of points; Iz 20 A is above 13 A (433.1.1)",
    lines: [...ring(8), "socket-2.c fcu-1.a 2m", "fcu-1.c socket-4.a 1.5 3m", "socket-4.b socket-5.a 1.5 3m"],
    gives: [],
  },
  {
    title: "the same on 1.0 mm²",
    why: "16 A is above the fuse, but Table 52.3 asks for 1.5 mm² to power",
    lines: [...ring(8), "socket-2.c fcu-1.a 2m", "fcu-1.c socket-4.a 1 3m", "socket-4.b socket-5.a 1 3m"],
    gives: ["fix least-size fcu-1.c~socket-4.a", "fix least-size socket-4.b~socket-5.a"],
  },
  {
    title: "four twins on B20 in 2.5 mm², 28 m",
    why: "27 A over 20 A; 20 A x 28 m x 17.8 mV = 10.0 V of 11.5; Zs 1.0 of 2.19 Ω",
    lines: radial(4, 2.5, 7),
    extras: { settings: { "way-1": breaker("B", 20) } },
    gives: [],
  },
  {
    title: "four twins on B20 in 2.5 mm², 38 m",
    why: "20 A x 38 m x 17.8 mV = 13.5 V, above 11.5 V; the third at 28.5 m has 10.1 V",
    lines: radial(4, 2.5, 9.5),
    extras: { settings: { "way-1": breaker("B", 20) } },
    gives: ["fix volt-drop socket-4"],
  },
  {
    title: "three twins on B16 in 1.5 mm²",
    why: "20 A over 16 A; 1.5 mm² is the least for power (Table 52.3)",
    lines: radial(3, 1.5, 5),
    extras: { settings: { "way-1": breaker("B", 16) } },
    gives: [],
  },
  {
    title: "two twins on B20 in 1.5 mm² clipped direct",
    why: "Iz 20 A is not below In 20 A (433.1.1 says at least)",
    lines: radial(2, 1.5, 5),
    extras: { settings: { "way-1": breaker("B", 20) } },
    gives: [],
  },
  {
    title: "the same run in a stud wall with insulation, method 102",
    why: "Table 4D5 gives 16 A there, below 20 A, and no cable carries the device, so none is a spur",
    lines: radial(2, 1.5, 5, "102"),
    extras: { settings: { "way-1": breaker("B", 20) } },
    gives: ["fix radial-cable socket-1.a~way-1.a", "fix radial-cable socket-1.b~socket-2.a"],
  },
  {
    title: "a cooker of 7 kW on B32 in 6 mm² through its control",
    why: "10 + 0.3 x 20.4 = 16.1 A, below 32 A, below 47 A; control 1.5 m away",
    lines: ["way-1.a control-1.a 6 10m", "control-1.c cooker-1.a 6 2m"],
    extras: {
      settings: { "control-1": control, "cooker-1": { appliance: "cooker" } },
      loads: [load("cooker-1", 7000)],
    },
    gives: [],
  },
  {
    title: "the same on B40 in 4 mm²",
    why: "In 40 A is above Iz 37 A in both cables (433.1.1)",
    lines: ["way-1.a control-1.a 4 10m", "control-1.c cooker-1.a 4 2m"],
    extras: {
      settings: { "way-1": breaker("B", 40), "control-1": control, "cooker-1": { appliance: "cooker" } },
      loads: [load("cooker-1", 7000)],
    },
    gives: ["fix device-cable control-1.a~way-1.a", "fix device-cable control-1.c~cooker-1.a"],
  },
  {
    title: "a cooker by a double-pole switch with 1.5 m of cable to it",
    why: "a double-pole switch is a control; within 2 m (On-Site Guide)",
    lines: ["way-1.a isolator-1.a 6 10m", "isolator-1.c cooker-1.a 6 1.5m"],
    extras: {
      settings: { "isolator-1": doublePole(45), "cooker-1": { appliance: "cooker" } },
      loads: [load("cooker-1", 7000)],
    },
    gives: [],
  },
  {
    title: "a shower of 9.5 kW on B45 in 10 mm²",
    why: "41.3 A, 45 A, 64 A in order; 2.5 V; Zs 0.46 of 0.97 Ω",
    lines: ["way-1.a isolator-1.a 10 12m", "isolator-1.c shower-1.a 10 2m"],
    extras: {
      settings: { "way-1": breaker("B", 45), "isolator-1": doublePole(50), "shower-1": shower },
      loads: [load("shower-1", 9500)],
    },
    gives: [],
  },
  {
    title: "the same shower on B40",
    why: "Ib 41.3 A is above In 40 A (433.1.1); no diversity for a shower",
    lines: ["way-1.a isolator-1.a 10 12m", "isolator-1.c shower-1.a 10 2m"],
    extras: {
      settings: { "way-1": breaker("B", 40), "isolator-1": doublePole(50), "shower-1": shower },
      loads: [load("shower-1", 9500)],
    },
    gives: ["fix design-current way-1"],
  },
  {
    title: "the same shower on B45 in 6 mm² clipped direct",
    why: "47 A is not below 45 A; 4.3 V of 11.5 V",
    lines: ["way-1.a isolator-1.a 6 12m", "isolator-1.c shower-1.a 6 2m"],
    extras: {
      settings: { "way-1": breaker("B", 45), "isolator-1": doublePole(50), "shower-1": shower },
      loads: [load("shower-1", 9500)],
    },
    gives: [],
  },
  {
    title: "a shower without a switch of its own",
    why: "462.1: each fixed appliance its means of isolation",
    lines: ["way-1.a shower-1.a 10 12m"],
    extras: {
      settings: { "way-1": breaker("B", 45), "shower-1": shower },
      loads: [load("shower-1", 9500)],
    },
    gives: ["fix isolation shower-1"],
  },
  {
    title: "a water heater of 3 kW and 120 l on B16 in 1.5 mm²",
    why: "13 A, 16 A, 20 A in order; 5.7 V",
    lines: ["way-1.a isolator-1.a 1.5 13m", "isolator-1.c heater-1.a 1.5 2m"],
    extras: {
      settings: {
        "way-1": breaker("B", 16),
        "isolator-1": doublePole(20),
        "heater-1": { appliance: "water-heater", litres: 120 },
      },
      loads: [load("heater-1", 3000)],
    },
    gives: [],
  },
  {
    title: "five roses with a switch each on B6 in 1.0 mm², 8 m apart",
    why: "0.43 A x 44 mV x 8 m x (5+4+3+2+1) = 2.3 V of 6.9 V",
    lines: [
      "way-1.a rose-1.a 1 8m",
      ...[1, 2, 3, 4].map((at) => `rose-${at}.b rose-${at + 1}.a 1 8m`),
      ...[1, 2, 3, 4, 5].map((at) => `rose-${at}.s switch-${at}.s 1 3m`),
    ],
    extras: { settings: { "way-1": breaker("B", 6) } },
    gives: [],
  },
  {
    title: "a rose 60 m away on C6 in 1.0 mm²",
    why: "Zs 0.35 + 63 m x 43.4 mΩ = 3.08 Ω, below 3.64 Ω (Table 41.3)",
    lines: ["way-1.a rose-1.a 1 60m", "rose-1.s switch-1.s 1 3m"],
    extras: { settings: { "way-1": breaker("C", 6) } },
    gives: [],
  },
  {
    title: "the same on C10",
    why: "3.08 Ω is above 2.19 Ω; the 30 mA RCD still disconnects, which the designer has to justify (411.4.4)",
    lines: ["way-1.a rose-1.a 1 60m", "rose-1.s switch-1.s 1 3m"],
    extras: { settings: { "way-1": breaker("C", 10) } },
    gives: ["query fault-loop switch-1"],
  },
  {
    title: "a ring on an earth electrode of 100 Ω with an RCD of 30 mA",
    why: "100 Ω x 0.03 A = 3 V of 50 V (411.5.3)",
    lines: ring(8),
    extras: { supply: { earthing: "TT", electrodeOhm: 100 } },
    gives: [],
  },
  {
    title: "the same on an electrode of 250 Ω",
    why: "7.5 V is safe, but above 200 Ω it may not be stable (Table 41.5 note 2)",
    lines: ring(8),
    extras: { supply: { earthing: "TT", electrodeOhm: 250 } },
    gives: ["note fault-loop way-1"],
  },
  {
    title: "a ring on an earth electrode with an RCD of 100 mA",
    why: "411.3.3 asks for 30 mA at socket outlets; on TT the RCD is all there is",
    lines: ring(8),
    extras: {
      settings: { "way-1": breaker("B", 32, 100) },
      supply: { earthing: "TT", electrodeOhm: 100 },
    },
    gives: ["danger rcd way-1"],
  },
  {
    title: "a cooker without an RCD, its control without a socket outlet, cable on the surface",
    why: "nothing of 411.3.3, 411.3.4, 522.6 or 701 asks for one there",
    lines: ["way-1.a control-1.a 6 10m", "control-1.c cooker-1.a 6 2m"],
    extras: {
      settings: { "way-1": breaker("B", 32, 0), "control-1": control, "cooker-1": { appliance: "cooker" } },
      loads: [load("cooker-1", 7000)],
    },
    gives: [],
  },
  {
    title: "the same with a socket outlet in the control",
    why: "411.3.3: a socket outlet to 32 A",
    lines: ["way-1.a control-1.a 6 10m", "control-1.c cooker-1.a 6 2m"],
    extras: {
      settings: {
        "way-1": breaker("B", 32, 0),
        "control-1": { ...control, hasSocketOutlet: true },
        "cooker-1": { appliance: "cooker" },
      },
      loads: [load("cooker-1", 7000)],
    },
    gives: ["fix rcd way-1"],
  },
  {
    title: "a light behind a 5 A fuse at the end of a 20 A radial",
    why: "the fuse is below Iz 16 A of 1.0 mm²; lights may hang on 5 A",
    lines: [
      "way-1.a socket-1.a 8m",
      "socket-1.b fcu-1.a 4m",
      "fcu-1.c rose-1.a 1 5m",
      "rose-1.s switch-1.s 1 3m",
    ],
    extras: { settings: { "way-1": breaker("B", 20), "fcu-1": { fuseRatingA: 5 } } },
    gives: [],
  },
  {
    title: "five twins on B32 in 6 mm², 40 m",
    why: "47 A; (20 A x 40 m + 3 A x 80 m) x 7.4 mV = 7.7 V; Zs 0.85 of 1.37 Ω",
    lines: radial(5, 6, 8),
    gives: [],
  },
  {
    title: "two twins on B32 in 4 mm², 48 m",
    why: "37 A; (20 A x 48 m + 12 A x 24 m) x 11.1 mV = 13.8 V; Zs 1.31 of 1.37 Ω",
    lines: radial(2, 4, 24),
    gives: ["fix volt-drop socket-2"],
  },
  {
    title: "one twin alone on B32 in 2.5 mm²",
    why: "the only cable of a way is no spur: In 32 A is above Iz 27 A (433.1.1)",
    lines: radial(1, 2.5, 10),
    gives: ["fix radial-cable socket-1.a~way-1.a"],
  },
  {
    title: "three twins on B25 in 4 mm² by method 100",
    why: "27 A is not below 25 A; Zs 0.77 of 1.75 Ω",
    lines: radial(3, 4, 7, "100"),
    extras: { settings: { "way-1": breaker("B", 25) } },
    gives: [],
  },
  {
    title: "two twins on a rewireable fuse of 15 A in 2.5 mm²",
    why: "0.725 x 27 = 19.6 A is not below 15 A (433.1.202)",
    lines: radial(2, 2.5, 8),
    extras: { settings: { "way-1": fuse("BS 3036", 15) } },
    gives: [],
  },
  {
    title: "the same in 1.5 mm²",
    why: "0.725 x 20 = 14.5 A is below 15 A (433.1.202)",
    lines: radial(2, 1.5, 8),
    extras: { settings: { "way-1": fuse("BS 3036", 15) } },
    gives: ["fix radial-cable socket-1.a~way-1.a", "fix radial-cable socket-1.b~socket-2.a"],
  },
  {
    title: "two twins on a cartridge fuse of 20 A in 2.5 mm²",
    why: "27 A; Zs 0.82 of 1.93 Ω",
    lines: radial(2, 2.5, 10),
    extras: { settings: { "way-1": fuse("BS 88-3", 20) } },
    gives: [],
  },
  {
    title: "a storage heater of 2.5 kW on B16 through a double-pole switch",
    why: "10.9 A, 16 A, 27 A in order, on a circuit of its own",
    lines: ["way-1.a isolator-1.a 12m", "isolator-1.c heater-1.a 1m"],
    extras: {
      settings: {
        "way-1": breaker("B", 16),
        "isolator-1": doublePole(20),
        "heater-1": { appliance: "storage-heater" },
      },
      loads: [load("heater-1", 2500)],
    },
    gives: [],
  },
  {
    title: "an oven of 1.9 kW on a ring through a switched connection unit",
    why: "up to 2 kW a cooking appliance needs no circuit of its own (On-Site Guide); the unit isolates it",
    lines: [...ring(8), "socket-2.c fcu-1.a 2m", "fcu-1.c oven-1.a 1.5 1m"],
    extras: {
      settings: { "fcu-1": { fuseRatingA: 13, switched: true }, "oven-1": { appliance: "oven" } },
      loads: [load("oven-1", 1900)],
    },
    gives: [],
  },
  {
    title: "a branch of 1.0 mm² to one single on a 16 A radial",
    why: "16 A carries the device, but Table 52.3 asks for 1.5 mm² to power",
    lines: [...radial(2, 1.5, 6), "socket-1.c socket-3.a 1 4m"],
    extras: { settings: { "way-1": breaker("B", 16), "socket-3": { gangs: 1 } } },
    gives: ["fix least-size socket-1.c~socket-3.a"],
  },
  {
    title: "a light and its switch straight off a 16 A radial",
    why: "559.5.1.204 allows lampholders to 16 A, and 1.5 mm² carries it",
    lines: ["way-1.a socket-1.a 8m", "socket-1.b switch-1.a 1.5 5m", "switch-1.t lamp-1.a 1.5 3m"],
    extras: { settings: { "way-1": breaker("B", 16) } },
    gives: [],
  },
  {
    title: "the same on 20 A",
    why: "above 16 A a lampholder needs a fuse of its own (559.5.1.204)",
    lines: ["way-1.a socket-1.a 8m", "socket-1.b switch-1.a 1.5 5m", "switch-1.t lamp-1.a 1.5 3m"],
    extras: { settings: { "way-1": breaker("B", 20) } },
    gives: ["fix needs-fuse lamp-1"],
  },
  {
    title: "a ring of 80 m on TN-S with Ze 0.8 Ω",
    why: "Zs 0.8 + 80 m x 23.4 mΩ / 4 = 1.27 of 1.37 Ω; 9.2 of 11.5 V",
    lines: ring(20),
    extras: { supply: { earthing: "TN-S", zeOhm: 0.8 } },
    gives: [],
  },
];
