import type { LineIndex } from "./line-index.ts";

/** What is wrong with a line, or nothing. */
export type LineHealth =
  | "healthy"
  | "stuck-low"
  | "stuck-high"
  | "dead-output"
  | "dead-input"
  | "no-answer"
  | "outputs-tied"
  | "loose-contact"
  | "group-too-large";

/** How a line's input is believed to follow its copper: as it should, never, always low, or not to be trusted. */
export type Hearing = "follows" | "high" | "low" | "unsteady";

/**
 * What is believed of a board, enough to predict its reading under any pattern. A line whose joins cannot be
 * told stands alone in it and is `unknown`: never taken for unplugged.
 */
export interface LineModel {
  /** For every line the number of its group; joined lines have the same number. */
  groupOf: Int32Array;
  /** 1 where the line's output pulls its group when asked to. */
  pulls: Uint8Array;
  hearing: Hearing[];
  health: LineHealth[];
  /** 1 where it cannot be told what the line is joined to. */
  unknown: Uint8Array;
}

/** A board of healthy lines with nothing plugged. */
export const emptyModel = (lineCount: number): LineModel => ({
  groupOf: Int32Array.from({ length: lineCount }, (_, line) => line),
  pulls: new Uint8Array(lineCount).fill(1),
  hearing: new Array<Hearing>(lineCount).fill("follows"),
  health: new Array<LineHealth>(lineCount).fill("healthy"),
  unknown: new Uint8Array(lineCount),
});

export const copyModel = (model: LineModel): LineModel => ({
  groupOf: model.groupOf.slice(),
  pulls: model.pulls.slice(),
  hearing: [...model.hearing],
  health: [...model.health],
  unknown: model.unknown.slice(),
});

/** All groups of a model, single lines included, each in line order, by their least line. */
export function membersByGroup(model: LineModel): LineIndex[][] {
  const members = new Map<number, LineIndex[]>();
  model.groupOf.forEach((group, line) => {
    const known = members.get(group);
    if (known === undefined) members.set(group, [line as LineIndex]);
    else known.push(line as LineIndex);
  });
  return [...members.values()];
}

/** The groups of two and more lines that can be believed, each in line order, by their least line. */
export const joinedGroups = (model: LineModel): LineIndex[][] =>
  membersByGroup(model)
    .map((members) => members.filter((line) => model.unknown[line] !== 1))
    .filter((members) => members.length > 1);

/** What one output cannot surely pull low is unknown, whatever was read; changes the model. */
export function distrustLargeGroups(model: LineModel, largestGroup: number): void {
  for (const members of membersByGroup(model))
    for (const line of members.length > largestGroup ? members : []) {
      model.unknown[line] = 1;
      if (model.health[line] === "healthy") model.health[line] = "group-too-large";
    }
}

/** Gives a model other groups, which hold every line once. */
export function regroup(model: LineModel, groups: readonly (readonly LineIndex[])[]): LineModel {
  for (const group of groups) {
    const least = Math.min(...group);
    for (const line of group) model.groupOf[line] = least;
  }
  return model;
}

/**
 * The lines whose reading under a pattern is not what the model foretells. A line that cannot be trusted is
 * left out.
 */
export function misfits(model: LineModel, pulled: Uint8Array, reading: Uint8Array): LineIndex[] {
  const { groupOf, pulls, hearing } = model;
  const isLow = new Uint8Array(groupOf.length);
  for (let line = 0; line < groupOf.length; line += 1)
    if (pulled[line] === 1 && pulls[line] === 1) isLow[groupOf[line]!] = 1;
  const found: LineIndex[] = [];
  for (let line = 0; line < groupOf.length; line += 1) {
    const ear = hearing[line];
    if (ear === "unsteady") continue;
    const foretold = ear === "follows" ? isLow[groupOf[line]!] : ear === "low" ? 1 : 0;
    if (foretold !== reading[line]) found.push(line as LineIndex);
  }
  return found;
}

/** True where two models sense the same: groups, health, and what is unknown. */
export const sameSensing = (a: LineModel, b: LineModel): boolean =>
  a.health.every((health, line) => health === b.health[line]) &&
  a.unknown.every((unknown, line) => unknown === b.unknown[line]) &&
  joinedGroups(a).join(";") === joinedGroups(b).join(";");
