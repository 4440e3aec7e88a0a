import { afterEach, describe, expect, it, vi } from "vitest";
import { Boxes } from "../../../kiosk/geometry/boxes.ts";
import { overlaps } from "../../../kiosk/geometry/point.ts";
import { stripsOf } from "../../../kiosk/plan/draw-house.ts";
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
  it("has places looked for its own labels: the name of a zone is looked for again only as a cable goes", () => {
    let drawing = draw([]);
    const looked = vi.spyOn(Boxes.prototype, "near");
    const lookedFor = (cables: readonly SensedCable[]): number => {
      looked.mockClear();
      drawing = draw(cables, drawing);
      return looked.mock.calls.length;
    };
    const all = lookedFor([...before, last]);
    const gone = lookedFor(before);
    const [came, ...itsPins] = [1, 2, 3].map((coreCount) => lookedFor([...before, halfIn(last, coreCount)]));
    // Or this shows nothing: the name of the zone finds no clear place, and all runs of it are looked along.
    expect(Math.min(all, gone)).toBeGreaterThan(300);
    for (const count of [came, ...itsPins]) expect(count).toBeLessThan(gone / 5);
    expect(drawing.labels.has(zoneLabelId(0))).toBe(true);
  });

  it("looks for another place for the name of a zone where it comes to lie over it", () => {
    const cables = [...before, last];
    const looked = vi.spyOn(Boxes.prototype, "near");
    let drawing = draw([]);
    let movedCount = 0;
    for (const count of cables.keys()) {
      looked.mockClear();
      const next = draw(cables.slice(0, count + 1), drawing);
      const [was, is] = [drawing, next].map(({ labels }) => labels.get(zoneLabelId(0)));
      if (!was || !is) throw new Error("no name");
      const came = next.cables.filter(({ line }) => !drawing.cables.some((one) => one.line === line));
      const isOver = came.flatMap(stripsOf).some((strip) => overlaps(was, strip));
      if (isOver) expect(looked.mock.calls.length, `with ${count + 1} cables`).toBeGreaterThan(60);
      if (JSON.stringify(was) !== JSON.stringify(is)) movedCount += 1;
      drawing = next;
    }
    expect(movedCount).toBeGreaterThan(0);
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
