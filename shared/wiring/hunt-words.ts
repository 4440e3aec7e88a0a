/** What can be hidden in a circuit for a hunt. */
export const hiddenFaultKinds = [
  "open-core",
  "high-resistance",
  "crossed-cores",
  "wrong-cpc",
  "missing-link",
  "low-insulation",
] as const;
export type HiddenFaultKind = (typeof hiddenFaultKinds)[number];

/** The cores a fault is named by, as a learner sees them: brown, blue, and green and yellow. */
export const faultCores = ["L", "N", "E"] as const;
export type FaultCore = (typeof faultCores)[number];

/** How many cores the name of a fault has; one of the cpc alone needs none. */
export const coreCountOf: Readonly<Record<HiddenFaultKind, 0 | 1 | 2>> = {
  "open-core": 1,
  "high-resistance": 1,
  "crossed-cores": 2,
  "wrong-cpc": 0,
  "missing-link": 1,
  "low-insulation": 2,
};

/** How hard a drawn hunt is. */
export const huntLevels = [1, 2, 3, 4] as const;
export type HuntLevel = (typeof huntLevels)[number];

/** How many faults a drawn hunt of a level hides. */
export const faultCountOf: Readonly<Record<HuntLevel, number>> = { 1: 1, 2: 1, 3: 1, 4: 2 };

/** What a hidden fault is called where it may be read by whoever looks for it: its place in the row, nothing else. */
export const hiddenFaultName = (index: number): string => `hidden-${index + 1}`;
