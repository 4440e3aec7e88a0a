import { isInside, overlaps, type Rect } from "../../../kiosk/geometry/point.ts";
import { sharedRunPx } from "../../../kiosk/geometry/shared-run.ts";
import { isCrossed } from "../../../kiosk/plan/cores-of.ts";
import { stripsOf } from "../../../kiosk/plan/draw-house.ts";
import { endLabelId, endNames, labelText } from "../../../kiosk/plan/draw-labels.ts";
import type { PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import { zoneLabelId } from "../../../kiosk/plan/draw-zones.ts";
import type { AttemptView } from "../../../shared/protocol/bench-view.ts";

/** A label that stands no further from its cable than this is read as its own. */
const besidePx = 4;

const pairs = <Thing>(things: readonly Thing[]): [Thing, Thing][] =>
  things.flatMap((a, i) => things.slice(i + 1).map((b): [Thing, Thing] => [a, b]));

/** What is wrong with a drawing of the plan: what lies on what, what is not written, which side is not told. */
export const planComplaints = (drawing: PlanDrawing, { cables, zones }: AttemptView): string[] => {
  const { ground, labels, marks } = drawing;
  const complaints: string[] = [];
  const named: { name: string; rect: Rect }[] = [
    ...ground.plates.map((plate) => ({ name: `plate ${plate.id}`, rect: plate })),
    ...[...labels].map(([id, rect]) => ({ name: `label ${id}`, rect })),
    ...marks.map((mark) => ({ name: `mark ${mark.sign} of ${mark.station}`, rect: mark })),
  ];
  for (const [a, b] of pairs(named))
    if (overlaps(a.rect, b.rect)) complaints.push(`${a.name} lies on ${b.name}`);
  for (const { name, rect } of named)
    if (!isInside(rect, ground.area)) complaints.push(`${name} leaves the plan`);
  for (const [one, two] of pairs(drawing.cables))
    if (sharedRunPx(one.line, two.line) > 1) complaints.push(`${one.cable.id} lies on ${two.cable.id}`);
  for (const { id } of cables)
    if (!drawing.cables.some(({ cable }) => cable.id === id)) complaints.push(`${id} is not drawn`);
  for (const drawn of drawing.cables) {
    const { id } = drawn.cable;
    const label = labels.get(id);
    if (!label) complaints.push(`${id} has no size`);
    else if (!labelText(drawn, label.form).startsWith(drawn.texts.at(-1) ?? "?"))
      complaints.push(`${id} does not say its size`);
    if (label && !stripsOf(drawn).some((strip) => overlaps(label, strip, besidePx)))
      complaints.push(`${id} has its size away from it`);
    for (const other of drawing.cables)
      if (other !== drawn && label && stripsOf(other).some((strip) => overlaps(label, strip)))
        complaints.push(`the size of ${id} lies on ${other.cable.id}`);
    const isTold = drawn.cores.some((core) => !core.isThere || isCrossed(core));
    for (const end of endNames) {
      const letters = labels.has(endLabelId(id, end));
      const hasAny = drawn.cores.some((core) => core.isThere);
      if (letters && !isTold) complaints.push(`${id} has letters that say nothing`);
      if (!letters && isTold && hasAny) complaints.push(`${id} has no letters at its ${end}`);
    }
    for (const plate of ground.plates) {
      const isOwn = [drawn.cable.from, drawn.cable.to].some((entry) => entry.startsWith(`${plate.id}.`));
      if (!isOwn && stripsOf({ ...drawn, widthPx: 1 }).some((strip) => overlaps(strip, plate)))
        complaints.push(`${id} runs under plate ${plate.id}`);
    }
  }
  for (const index of zones.keys())
    if (!labels.has(zoneLabelId(index))) complaints.push(`zone ${index} is not told`);
  return complaints;
};
