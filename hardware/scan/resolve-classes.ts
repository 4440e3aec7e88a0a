import type { LineIndex } from "../lines/line-index.ts";
import type { LineReading } from "../lines/lines.ts";
import { type Evidence, patternOf, pullEach, type Scan } from "./patterns.ts";

/**
 * Two lines that heard the same are a pair. Three would be one group on a board at rest, but a lead put in or
 * taken out in mid-scan can make a free line hear what a pair hears: only a pull of its own tells them apart.
 */
const surelyOneGroup = 2;

export interface Resolved {
  /** Groups of two and more lines. */
  groups: LineIndex[][];
  /** Lines that did not pull when they alone of their class were asked to. */
  deadOutputs: Set<LineIndex>;
  evidence: Evidence[];
  /** What was read with nothing pulled in between. */
  released: LineReading[];
}

/**
 * Takes apart the classes of lines that heard the same. A larger class is several groups that look alike, or one
 * bigger one: one of its lines is pulled, all classes in the same pattern, and what reads low in the class is
 * that line's whole group; then the rest.
 */
export function* resolveClasses(
  lineCount: number,
  classes: readonly LineIndex[][],
  canPull: (line: LineIndex) => boolean,
): Scan<Resolved> {
  const groups = classes.filter(({ length }) => length > 1 && length <= surelyOneGroup);
  const deadOutputs = new Set<LineIndex>();
  const evidence: Evidence[] = [];
  const released: LineReading[] = [];
  let open = classes.filter(({ length }) => length > surelyOneGroup);
  while (open.length > 0) {
    const turns = open.map((members) => ({
      members,
      pullers: pullersFor(members.filter((line) => canPull(line) && !deadOutputs.has(line))),
    }));
    const turnCount = Math.max(...turns.map(({ pullers }) => pullers.length));
    if (turnCount === 0) break;
    const pulled = yield* pullEach(
      lineCount,
      Array.from({ length: turnCount }, (_, turn) =>
        patternOf(
          lineCount,
          turns.flatMap(({ pullers }) => pullers.slice(turn, turn + 1)),
        ),
      ),
    );
    evidence.push(...pulled.evidence);
    released.push(pulled.released);
    open = turns.flatMap(({ members, pullers }) => {
      let rest = members;
      pullers.forEach((puller, turn) => {
        const reading = pulled.evidence[turn]!.reading;
        if (reading[puller] !== 1) deadOutputs.add(puller);
        else if (rest.includes(puller)) {
          groups.push(rest.filter((line) => reading[line] === 1));
          rest = rest.filter((line) => reading[line] !== 1);
        }
      });
      if (rest.length > surelyOneGroup && pullers.length > 0) return [rest];
      if (rest.length > 1 && rest.length <= surelyOneGroup) groups.push(rest);
      return [];
    });
  }
  return { groups, deadOutputs, evidence, released };
}

/**
 * Which lines of a class to pull in turn without waiting for the readings: one of each guessed pair but the
 * last. Lines that look alike and are joined in pairs differ in every bit in which they differ at all; a wrong
 * guess costs a pattern, never a wrong group.
 */
function pullersFor(members: readonly LineIndex[]): LineIndex[] {
  if (members.length === 0) return [];
  const differing = members.reduce((mask, line) => mask | (line ^ members[0]!), 0);
  const guessed = new Set<LineIndex>();
  const pullers: LineIndex[] = [];
  for (const line of members) {
    if (guessed.has(line)) continue;
    pullers.push(line);
    guessed.add(line).add((line ^ differing) as LineIndex);
  }
  return pullers.slice(0, Math.max(1, Math.min(pullers.length, Math.floor(members.length / 2)) - 1));
}
