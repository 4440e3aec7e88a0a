import type { CableId } from "../../shared/board/ids.ts";
import type { Label } from "../geometry/lay-labels.ts";
import type { DrawnCable } from "./draw-cables.ts";
import { endLabelId, endNames } from "./draw-labels.ts";
import type { PlanDrawing } from "./draw-plan.ts";

/** A cable with all that is written on it. */
export interface CableRow {
  id: CableId;
  drawn: DrawnCable;
  label: Label | undefined;
  /** The letters at its start and at its end. */
  tags: readonly (Label | undefined)[];
  /** It is on its way: it stands on the plan, and is not seen yet. */
  isComing: boolean;
}

type Drawing = Pick<PlanDrawing, "cables" | "labels">;

const rowOf = (drawn: DrawnCable, { labels }: Drawing, isComing: boolean): CableRow => {
  const { id } = drawn.cable;
  const tags = endNames.map((end) => labels.get(endLabelId(id, end)));
  return { id, drawn, label: labels.get(id), tags, isComing };
};

const isSame = (a: CableRow, b: CableRow): boolean =>
  a.drawn === b.drawn &&
  a.label === b.label &&
  a.isComing === b.isComing &&
  a.tags.every((tag, i) => tag === b.tags[i]);

/**
 * What is seen of a drawing, with the cables that only `ahead` has. A row that says the same as in `last` is the very same
 * object, so that nothing is looked at again for it.
 */
export const cableRows = (
  drawing: Drawing,
  ahead: Drawing | undefined,
  last: readonly CableRow[],
): readonly CableRow[] => {
  const before = new Map(last.map((row) => [row.id, row]));
  const seen = new Map(drawing.cables.map((drawn) => [drawn.cable.id, drawn]));
  return (ahead ?? drawing).cables.map((drawn) => {
    const there = seen.get(drawn.cable.id);
    const row = rowOf(there ?? drawn, there || !ahead ? drawing : ahead, there === undefined);
    const same = before.get(row.id);
    return same && isSame(same, row) ? same : row;
  });
};
