import { describe, expect, it } from "vitest";
import { drawPlan } from "../../../kiosk/plan/draw-plan.ts";
import { answerViews } from "./answer-views.ts";
import { english } from "./english.ts";
import { fontWidth } from "./font-width.ts";
import { planComplaints } from "./plan-complaints.ts";
import { planStages } from "./plan-stages.ts";

const answers = answerViews();

describe.each(planStages)(
  "the plan of every answer of every scenario on a panel of $panel",
  ({ stage, sizes }) => {
    it.each(answers)("$scenario, $answer", ({ attempt, face }) => {
      const drawing = drawPlan({
        attempt,
        face,
        area: stage,
        mmPx: sizes.mmPx,
        captionPx: sizes.captionPx,
        words: english,
        measure: fontWidth,
        isTypefaceThere: true,
      });
      expect(planComplaints(drawing, attempt).join("; ")).toBe("");
    });
  },
);
