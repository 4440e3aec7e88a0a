/** A point of a band: at this current, after this time. */
export interface Gate {
  currentA: number;
  timeS: number;
}

/** Seconds on a line of gates: never below the first, log-log between two, constant I²t beyond the last. */
export function timeOnGates(gates: readonly Gate[], currentA: number): number {
  const first = gates[0]!;
  // At a holding gate the device holds; at an opening gate it opens: the gate itself belongs to the line.
  if (currentA < first.currentA) return Infinity;
  const above = gates.findIndex((gate) => gate.currentA >= currentA);
  if (above === 0) return first.timeS;
  if (above > 0) {
    const low = gates[above - 1]!;
    const high = gates[above]!;
    const part = Math.log(currentA / low.currentA) / Math.log(high.currentA / low.currentA);
    return low.timeS * (high.timeS / low.timeS) ** part;
  }
  const last = gates.at(-1)!;
  return last.timeS * (last.currentA / currentA) ** 2;
}
