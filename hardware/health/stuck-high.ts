import type { LineIndex } from "../lines/line-index.ts";
import { type LineModel, membersByGroup } from "../lines/line-model.ts";

/**
 * Names lines that are held high. One that is free just does not answer, as if its output or its input were dead;
 * only what a lead does to others tells: a group that falls silent as a whole, or a free line that falls silent
 * when a lead (or a probe) joins it to the one line that did not answer before. Changes `after`.
 */
export function nameStuckHigh(before: LineModel, after: LineModel): void {
  const wasSilent = (line: number): boolean =>
    before.health[line] === "no-answer" || before.health[line] === "stuck-high";
  const silent = [...after.health.keys()].filter((line) => after.health[line] === "no-answer") as LineIndex[];
  const newly = new Set(silent.filter((line) => !wasSilent(line)));
  const older = silent.filter(wasSilent);
  for (const line of older) after.health[line] = before.health[line]!;
  for (const group of membersByGroup(before))
    if (group.length > 1 && group.every((line) => newly.has(line)))
      for (const line of group) {
        after.health[line] = "stuck-high";
        newly.delete(line);
      }
  if (newly.size > 0 && older.length === 1)
    for (const line of [...newly, ...older]) after.health[line] = "stuck-high";
}
