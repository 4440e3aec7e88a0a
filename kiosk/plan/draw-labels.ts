import { type Label, type LabelWish, placeLabels } from "../geometry/place-labels.ts";
import { roleName } from "../wiring/place-name.ts";
import type { DrawnCable } from "./draw-cables.ts";
import { isDrawnBackwards } from "./drawn-backwards.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";

export type CableEndName = "start" | "end";
export const endNames: readonly CableEndName[] = ["start", "end"];

/** The id of the letters at an end of a cable. */
export const endLabelId = (cable: string, end: CableEndName): string => `${cable}/${end}`;

/** Letters of an end in the order the cores are drawn in where the cable meets the plate: from the left, or the top. */
export const endLetters = (
  { cores, line }: DrawnCable,
  end: CableEndName,
  words: PlanInput["words"],
): string[] => {
  const letters = cores.flatMap((core) => {
    const role = end === "start" ? core.fromRole : core.toRole;
    return role ? [roleName(role, words)] : [];
  });
  return isDrawnBackwards(line, end) ? letters.toReversed() : letters;
};

const wishesOf = (input: PlanInput, cables: readonly DrawnCable[]): LabelWish[] => {
  const { mmPx, captionPx, words, measure } = input;
  const markPx = mmPx * 4.4;
  const padPx = mmPx * 1.3;
  const letters = cables.flatMap((drawn) =>
    endNames.map((end): LabelWish => ({
      id: endLabelId(drawn.cable.id, end),
      own: drawn.cable.id,
      line: drawn.line,
      near: end,
      forms: [
        {
          width: endLetters(drawn, end, words).length * captionPx * 0.74 + 4,
          height: captionPx * 0.98,
        },
      ],
    })),
  );
  const sizes = cables.map(({ cable, line, texts, weight }): LabelWish => ({
    id: cable.id,
    line,
    near: "middle",
    forms: texts.map((text) => ({
      width: measure(text, captionPx, true) + 2 * padPx + (weight ? markPx : 0),
      height: captionPx * 1.25,
    })),
  }));
  return [...letters, ...sizes];
};

/**
 * The labels of cables by their ids. Labels of cables that are drawn as they were in `last` stay: one more cable
 * moves none of them, as long as it finds a place of its own.
 */
export const drawLabels = (
  input: PlanInput,
  ground: PlanGround,
  cables: readonly DrawnCable[],
  last: { cables: readonly DrawnCable[]; labels: ReadonlyMap<string, Label> },
): ReadonlyMap<string, Label> => {
  if (!input.isTypefaceThere) return new Map();
  if (cables === last.cables) return last.labels;
  const asBefore = new Set(last.cables);
  const still = new Map<string, Label>();
  for (const drawn of cables.filter((one) => asBefore.has(one)))
    for (const id of [drawn.cable.id, ...endNames.map((end) => endLabelId(drawn.cable.id, end))]) {
      const label = last.labels.get(id);
      if (label) still.set(id, label);
    }
  const labels = placeLabels(
    wishesOf(input, cables),
    {
      area: ground.area,
      solid: ground.plates,
      lines: cables.map(({ cable, line }) => ({ id: cable.id, line })),
      halfLinePx: input.mmPx * 1.5,
    },
    still,
  );
  return new Map(labels.map((label) => [label.id, label]));
};
