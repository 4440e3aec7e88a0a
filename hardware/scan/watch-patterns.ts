import { allLines } from "../lines/line-index.ts";
import { type LineModel, membersByGroup } from "../lines/line-model.ts";
import { patternOf } from "./patterns.ts";
import { numberPatterns } from "./targeted-decode.ts";

/**
 * One pattern a bit of the groups' numbers; the end that is pulled changes from turn to turn, so that every output is
 * heard. One more for bad lines: a deaf one shows a new lead only to its other end, while that is not pulled itself; a
 * dead output shows that it is mended. Lines stuck low are pulled in that one only, so that it is seen when they come
 * free.
 */
export function watchPatterns(model: LineModel, turn: number): Uint8Array[] {
  const { pulls, hearing, health } = model;
  const lineCount = model.groupOf.length;
  const pullers = membersByGroup(model).flatMap((group) => {
    const able = group.filter((line) => pulls[line] === 1);
    return able.length === 0 ? [] : [able[turn % able.length]!];
  });
  const bad = allLines(lineCount).filter(
    (line) => health[line] === "dead-output" || (pulls[line] === 1 && hearing[line] !== "follows"),
  );
  const numbered = pullers.filter((line) => health[line] !== "stuck-low");
  const patterns = numberPatterns(lineCount, numbered, 1);
  return bad.length === 0 ? patterns : [...patterns, patternOf(lineCount, bad)];
}
