import { describe, expect, it } from "vitest";
import { lanePitchMm } from "../../../kiosk/geometry/cable-width.ts";
import { cableStrayPx } from "../../../kiosk/plan/cable-stray.ts";
import { drawPlan, type PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import { someOf } from "../../breadth.ts";
import { type AnswerView, answerViews } from "./answer-views.ts";
import { english } from "./english.ts";
import { fontWidth } from "./font-width.ts";
import { planComplaints } from "./plan-complaints.ts";
import { planStages } from "./plan-stages.ts";
import { routeComplaints } from "./route-complaints.ts";
import { shapeComplaints } from "./shape-complaints.ts";

const everyAnswer = answerViews();

describe.each(planStages.map((one, place) => ({ ...one, place })))(
  "the plan of every answer of every scenario on a panel of $panel",
  ({ stage, sizes, place }) => {
    // Each answer on one of the panels, where not on all.
    const answers = someOf(everyAnswer, planStages.length, place);
    const known = new Map<AnswerView, PlanDrawing>();
    const drawingOf = (answer: AnswerView): PlanDrawing => {
      const { attempt, face } = answer;
      const drawing =
        known.get(answer) ??
        drawPlan({
          attempt,
          face,
          area: stage,
          mmPx: sizes.mmPx,
          captionPx: sizes.captionPx,
          words: english,
          measure: fontWidth,
          isTypefaceThere: true,
        });
      known.set(answer, drawing);
      return drawing;
    };

    it.each(answers)("$scenario, $answer", (answer) => {
      const drawing = drawingOf(answer);
      const complaints = [
        ...planComplaints(drawing, answer.attempt),
        ...routeComplaints(drawing, sizes.mmPx),
        ...shapeComplaints(drawing, answer.attempt, sizes.mmPx),
      ];
      expect(complaints.join("; ")).toBe("");
    });

    it("has nine cables of ten within one lane of the route they are judged on", () => {
      const lanePx = lanePitchMm * sizes.mmPx;
      const isNear = answers.flatMap((answer) => {
        const { cables, ground } = drawingOf(answer);
        return cables.map(
          ({ cable, line }) => cableStrayPx(cable, line, ground, sizes.mmPx, lanePx) <= lanePx,
        );
      });
      expect(isNear.filter(Boolean).length / isNear.length).toBeGreaterThan(0.9);
    });
  },
);
