/** What a run may be asked for: a day at most, read off every second at the finest and at so many points at most. */
export const runLimits = { mostDurationS: 86_400, leastStepS: 1, mostPoints: 20_000 } as const;

/** A run was asked for that would not end or could not be drawn: a mistake of whoever calls, never of a wiring. */
export class RunLimitsError extends Error {
  readonly code = "run-limits";

  constructor(field: string) {
    super(`a run cannot have this ${field}`);
  }
}

/** Throws `RunLimitsError` where a duration, a step, a time of the programme or a power is outside what a run may have. */
export function assertRunLimits(run: {
  durationS: number;
  stepS: number;
  programme: readonly { atS: number }[];
  loads: readonly { powerW: number }[];
}): void {
  const { durationS, stepS, programme, loads } = run;
  const { mostDurationS, leastStepS, mostPoints } = runLimits;
  if (!(durationS >= 0 && durationS <= mostDurationS)) throw new RunLimitsError("durationS");
  if (!(stepS >= leastStepS) || durationS / stepS > mostPoints) throw new RunLimitsError("stepS");
  if (programme.some(({ atS }) => !Number.isFinite(atS))) throw new RunLimitsError("atS");
  if (loads.some(({ powerW }) => !(powerW > 0 && powerW < Infinity))) throw new RunLimitsError("powerW");
}
