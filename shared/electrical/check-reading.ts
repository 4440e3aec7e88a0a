import type { CircuitModel } from "../circuit/model.ts";
import { meterLimits } from "../trade/meter-limits.ts";
import type { Reading } from "../wiring/wiring.schema.ts";
import { judgeReading } from "./judge-reading.ts";
import { readingPlace } from "./reading-place.ts";

/**
 * What there is to say of a reading on record. `misread`: something else was written down than the meter showed.
 * `wrong-points`, `wrong-setting`: it was not taken as its test is. `passed`, `failed`: called so, and it is the other.
 * `implausible`: called a pass though no cable of that length reads so. `unclear`: the record does not hold enough.
 */
export const readingChecks = [
  "right",
  "misread",
  "wrong-points",
  "wrong-setting",
  "passed",
  "failed",
  "implausible",
  "unclear",
] as const;
export type ReadingCheck = (typeof readingChecks)[number];

/** Checks one reading: how it was taken first, then what was written down, then what the learner said of it. */
export function checkReading(
  model: CircuitModel,
  reading: Reading,
  readings: readonly Reading[],
): ReadingCheck {
  const place = readingPlace(reading);
  if (reading.taken && place !== "right") return place;
  if (isMisread(reading)) return "misread";
  const right = judgeReading(model, reading, readings);
  const { judged } = reading;
  if (right === "unclear" || judged === undefined) return "unclear";
  if (right === "implausible") return judged === "fail" ? "right" : "implausible";
  if (judged === right) return "right";
  return judged === "pass" ? "passed" : "failed";
}

/** True where what is on record is not what the meter showed, beyond its last digit. */
function isMisread({ shown, resistanceOhm, insulationMegohm, isOverRange = false }: Reading): boolean {
  if (!shown) return false;
  const isApart = (written: number | undefined, read: number | undefined): boolean =>
    (written === undefined) !== (read === undefined) ||
    Math.abs((written ?? 0) - (read ?? 0)) > meterLimits.resolutionOhm / 2;
  return (
    isOverRange !== (shown.isOverRange ?? false) ||
    isApart(resistanceOhm, shown.resistanceOhm) ||
    isApart(insulationMegohm, shown.insulationMegohm)
  );
}
