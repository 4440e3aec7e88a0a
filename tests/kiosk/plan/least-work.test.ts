import { afterEach, describe, expect, it, vi } from "vitest";
import { Boxes } from "../../../kiosk/geometry/boxes.ts";
import { drawPlan, type PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import { strayLanes } from "../../../kiosk/plan/stray-lanes.ts";
import { zoneLabelId } from "../../../kiosk/plan/draw-zones.ts";
import type { SensedCable } from "../../../shared/protocol/bench-view.ts";
import { workshopFace } from "../faces.ts";
import { english } from "./english.ts";
import { fontWidth } from "./font-width.ts";
import { halfIn, manyCables } from "./many-cables.ts";
import { planStages } from "./plan-stages.ts";

const attempt = manyCables();
const before = attempt.cables.slice(0, -1);
const last = attempt.cables.at(-1);
const stage = planStages.find(({ panel }) => panel === "1280x800");
if (!last || !stage) throw new Error("no cable");
const { mmPx, captionPx } = stage.sizes;

const draw = (cables: readonly SensedCable[], drawing?: PlanDrawing): PlanDrawing =>
  drawPlan(
    {
      attempt: { ...attempt, cables: [...cables] },
      face: workshopFace,
      area: stage.stage,
      mmPx,
      captionPx,
      words: english,
      measure: fontWidth,
      isTypefaceThere: true,
    },
    drawing,
  );

afterEach(() => vi.restoreAllMocks());

describe("among many cables one more", () => {
  it("has places for labels looked for as it comes, and for its letters alone as each of its pins does", () => {
    let drawing = draw(before);
    const looked = vi.spyOn(Boxes.prototype, "near");
    const lookedPer = [1, 2, 3].map((coreCount) => {
      looked.mockClear();
      drawing = draw([...before, halfIn(last, coreCount)], drawing);
      return looked.mock.calls.length;
    });
    const [whenItCame = 0, ...whenPinsCame] = lookedPer;
    // Or this shows nothing: the name of the zone finds no clear place, and all runs of it are looked along.
    expect(whenItCame).toBeGreaterThan(300);
    for (const count of whenPinsCame) expect(count).toBeLessThan(whenItCame / 3);
    expect(drawing.labels.has(zoneLabelId(0))).toBe(true);
  });

  it("is held to its route by itself: what has not moved strays no further than it did", () => {
    let readCount = 0;
    const watched = [...before, last].map((cable) => {
      const path = new Proxy(cable.path, {
        get: (target, key, self) => {
          if (key === "map") readCount += 1;
          return Reflect.get(target, key, self) as unknown;
        },
      });
      return { ...cable, path };
    });
    const { cables, ground } = draw(watched);
    const lanes = strayLanes(cables, ground, mmPx);
    readCount = 0;
    expect(
      strayLanes(
        cables.map((drawn) => ({ ...drawn })),
        ground,
        mmPx,
      ),
    ).toBe(lanes);
    const strayed = readCount;
    const [first, ...others] = cables;
    if (!first) throw new Error("no cable");
    readCount = 0;
    strayLanes([{ ...first, line: [...first.line] }, ...others], ground, mmPx);
    const movedOne = readCount - strayed;
    readCount = 0;
    strayLanes(
      cables.map((drawn) => ({ ...drawn, line: [...drawn.line] })),
      ground,
      mmPx,
    );
    const movedAll = readCount - strayed;
    expect(movedOne).toBeGreaterThan(0);
    expect(movedOne).toBeLessThan(cables.length / 2);
    expect(movedAll).toBeGreaterThanOrEqual(cables.length);
  });
});
