import { describe, expect, it } from "vitest";
import { drawPlan } from "../../../kiosk/plan/draw-plan.ts";
import type { Point } from "../../../kiosk/geometry/point.ts";
import { answerViews } from "./answer-views.ts";
import { english } from "./english.ts";
import { fontWidth } from "./font-width.ts";
import { planStages } from "./plan-stages.ts";
import { shapeComplaints } from "./shape-complaints.ts";

const [small] = planStages;
const answer = answerViews().find(({ scenario }) => scenario === "ring-and-spurs");
if (!small || !answer) throw new Error("there is no ring with spurs");
const { mmPx, captionPx } = small.sizes;
const drawing = drawPlan({
  ...answer,
  area: small.stage,
  mmPx,
  captionPx,
  words: english,
  measure: fontWidth,
  isTypefaceThere: true,
});
const complaintsAt = (line: Point[]): string => {
  const [first] = drawing.cables;
  if (!first) throw new Error("nothing is drawn");
  return shapeComplaints({ ...drawing, cables: [{ ...first, line }] }, answer.attempt, mmPx).join("; ");
};

describe("the check of how cables are drawn", () => {
  it("finds a jog, a bend right at a plate, and a cable on the wall round the house", () => {
    const sound = [
      { x: 100, y: 100 },
      { x: 200, y: 100 },
      { x: 200, y: 200 },
      { x: 300, y: 200 },
    ];
    expect(complaintsAt(sound)).toBe("");
    expect(complaintsAt(sound.map(({ x, y }) => ({ x, y: y > 100 ? 125 : y })))).toContain("jogs");
    expect(complaintsAt(sound.map(({ x, y }) => ({ x: x === 100 ? 195 : x, y })))).toContain("bends");
    const onWall = [
      { x: 100, y: drawing.ground.fit.originY },
      { x: 200, y: drawing.ground.fit.originY },
    ];
    expect(complaintsAt(onWall)).toContain("wall");
  });
});
