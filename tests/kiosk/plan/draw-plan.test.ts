import { describe, expect, it } from "vitest";
import { drawPlan, type PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import type { PlanInput } from "../../../kiosk/plan/plan-input.ts";
import type { AttemptView } from "../../../shared/protocol/bench-view.ts";
import { overlaps } from "../../../kiosk/geometry/point.ts";
import { stripsOf } from "../../../kiosk/plan/draw-house.ts";
import { workshopFace } from "../faces.ts";
import { answerViews } from "./answer-views.ts";
import { english } from "./english.ts";
import { fontWidth } from "./font-width.ts";
import { planComplaints } from "./plan-complaints.ts";
import { planStages } from "./plan-stages.ts";

const [small] = planStages;
const inputOf = (attempt: AttemptView, more: Partial<PlanInput> = {}): PlanInput => ({
  attempt,
  face: workshopFace,
  area: small?.stage ?? { width: 0, height: 0 },
  mmPx: small?.sizes.mmPx ?? 1,
  captionPx: small?.sizes.captionPx ?? 1,
  words: english,
  measure: fontWidth,
  isTypefaceThere: true,
  ...more,
});
const sunRoom = answerViews().find(({ scenario }) => scenario === "sun-room")?.attempt;
if (!sunRoom) throw new Error("there is no sun room");
const zoned = answerViews().filter(({ answer, attempt }) => answer === "model 1" && attempt.zones.length > 0);

describe("the drawing of the plan", () => {
  it("is the very same where nothing has changed", () => {
    const before = drawPlan(inputOf(sunRoom));
    const after = drawPlan(
      inputOf({ ...sunRoom, cables: sunRoom.cables.map((cable) => ({ ...cable })) }),
      before,
    );
    for (const part of ["ground", "walls", "cables", "labels", "rooms"] as const)
      expect(after[part]).toBe(before[part]);
  });

  it("draws walls as such, and not the floors and ceilings that carry cables", () => {
    const { plan } = sunRoom.scenario;
    const walls = plan.walls.filter(({ as = "wall" }) => as === "wall").length;
    const carried = plan.walls.map((wall) =>
      wall.as === "floor" ? { ...wall, as: "ceiling" as const } : wall,
    );
    const scenario = { ...sunRoom.scenario, plan: { ...plan, walls: carried } };
    expect(drawPlan(inputOf(sunRoom)).walls).toHaveLength(walls);
    expect(drawPlan(inputOf({ ...sunRoom, scenario })).walls).toHaveLength(walls);
  });

  it("leaves every other cable as it was when one changes its size", () => {
    const before = drawPlan(inputOf(sunRoom));
    const changed = sunRoom.cables.map((cable, i) => (i === 2 ? { ...cable, csaMm2: 6 } : cable));
    const after = drawPlan(inputOf({ ...sunRoom, cables: changed }), before);
    expect(after.cables.map((drawn, i) => drawn === before.cables[i])).toEqual(
      sunRoom.cables.map((_, i) => i !== 2),
    );
    expect(after.cables[2]?.texts.at(-1)).toBe("6");
  });

  it("draws a cable as written down as soon as it is, though nothing else of it has changed", () => {
    const unsaved = sunRoom.cables.map((cable) => ({ ...cable, isUnsaved: true as const }));
    const before = drawPlan(inputOf({ ...sunRoom, cables: unsaved }));
    expect(before.cables.every(({ cable }) => cable.isUnsaved === true)).toBe(true);
    const after = drawPlan(inputOf(sunRoom), before);
    expect(after.cables.filter(({ cable }) => cable.isUnsaved === true)).toEqual([]);
  });

  it("asks for no label anew when a cable is written down", () => {
    const unsaved = sunRoom.cables.map((cable) => ({ ...cable, isUnsaved: true as const }));
    const before = drawPlan(inputOf({ ...sunRoom, cables: unsaved }));
    expect(drawPlan(inputOf(sunRoom), before).labels).toBe(before.labels);
  });

  it("moves no name of a zone while nothing comes to lie on it", () => {
    let keptCount = 0;
    for (const { attempt } of zoned) {
      let drawing = drawPlan(inputOf({ ...attempt, cables: [] }));
      for (const count of attempt.cables.keys()) {
        const before = [...drawing.labels.values()].filter(({ id }) => id.startsWith("zone/"));
        drawing = drawPlan(inputOf({ ...attempt, cables: attempt.cables.slice(0, count + 1) }), drawing);
        const { ground, marks, labels, cables } = drawing;
        for (const label of before) {
          const others = [...labels.values()].filter(({ id }) => id !== label.id);
          const lying = [...ground.plates, ...marks, ...others, ...cables.flatMap(stripsOf)];
          // Half its height more: a strip is taken as wider than it is drawn, and labels keep some air.
          if (lying.some((other) => overlaps(label, other, label.height / 2))) continue;
          expect(labels.get(label.id)).toBe(label);
          keptCount += 1;
        }
      }
    }
    expect(keptCount).toBeGreaterThan(0);
  });

  it("moves no line when a cable goes and comes", () => {
    const whole = drawPlan(inputOf(sunRoom));
    const without = drawPlan(inputOf({ ...sunRoom, cables: sunRoom.cables.slice(1) }), whole);
    for (const [i, { line }] of without.cables.entries()) expect(line).toBe(whole.cables[i + 1]?.line);
  });

  it("is laid anew on another area, in other letters and in another house", () => {
    const before = drawPlan(inputOf(sunRoom));
    for (const more of [
      { area: { width: 700, height: 500 } },
      { captionPx: 30 },
      { attempt: { ...sunRoom, id: "another" } },
      { words: { ...english, language: "pl" as const } },
    ])
      expect(drawPlan(inputOf(sunRoom, more), before).ground).not.toBe(before.ground);
  });

  it("waits with its labels for the typeface they are measured in", () => {
    expect(drawPlan(inputOf(sunRoom, { isTypefaceThere: false })).labels.size).toBe(0);
    expect(drawPlan(inputOf(sunRoom)).labels.size).toBeGreaterThan(0);
  });

  it("gives a station that no plan has a place where a cable leads to it", () => {
    const [first] = sunRoom.cables;
    if (!first) throw new Error("no cable");
    const stray = {
      ...first,
      id: "socket-6.a~way-1.c" as typeof first.id,
      from: "socket-6.a" as typeof first.from,
      path: [],
    };
    const { ground, cables } = drawPlan(inputOf({ ...sunRoom, cables: [...sunRoom.cables, stray] }));
    expect(ground.plates.map(({ id }) => id)).toContain("socket-6");
    expect(cables).toHaveLength(sunRoom.cables.length + 1);
  });
});

/** The plan before its last cable is plugged, and its input with so many cores of that cable in. */
function plugging(attempt: AttemptView, face: PlanInput["face"]) {
  const [last, others] = [attempt.cables.at(-1), attempt.cables.slice(0, -1)];
  if (!last) throw new Error("no cable");
  const inputWith = (coreCount: number): PlanInput => {
    const pluggedNow = { ...last, isUnsaved: true as const, conductors: last.conductors.slice(0, coreCount) };
    return inputOf({ ...attempt, cables: [...others, pluggedNow] }, { face });
  };
  const before = drawPlan(inputOf({ ...attempt, cables: others }, { face }));
  return { before, count: last.conductors.length, inputWith };
}

describe("a plan wired by hand, one pin of each plug after the other", () => {
  const models = answerViews().filter(({ answer }) => answer === "model 1");

  it.each(models)(
    "$scenario ends without a fault, and laid anew only where it would be at once",
    ({ attempt, face }) => {
      let drawing: PlanDrawing | undefined;
      for (const [i, cable] of attempt.cables.entries())
        for (const coreCount of cable.conductors.keys()) {
          const halfIn = { ...cable, conductors: cable.conductors.slice(0, coreCount + 1) };
          const cables = [...attempt.cables.slice(0, i), halfIn];
          drawing = drawPlan(inputOf({ ...attempt, cables }, { face }), drawing);
        }
      if (!drawing) throw new Error("nothing was wired");
      expect(planComplaints(drawing, attempt)).toEqual([]);
      // One after the other they may find room where all at once do not; never the other way round.
      const atOnce = drawPlan(inputOf(attempt, { face }));
      expect([drawing.isMakeshift, atOnce.isMakeshift]).not.toEqual([true, false]);
    },
  );

  it.each(models)(
    "$scenario lays no other cable anew while pins of the last one are on their way",
    ({ attempt, face }) => {
      const last = attempt.cables.at(-1);
      if (!last) throw new Error("no cable");
      const others = attempt.cables.slice(0, -1);
      // Every place is on the plan before: a plate that comes with the cable would move the others by right.
      const pulled = { ...last, conductors: last.conductors.slice(0, 1) };
      let drawing = drawPlan(inputOf({ ...attempt, cables: [...others, pulled] }, { face }));
      const lines = drawing.cables.slice(0, -1).map(({ line }) => line);
      for (const coreCount of last.conductors.slice(1).keys()) {
        const halfIn = {
          ...last,
          isUnsaved: true as const,
          conductors: last.conductors.slice(0, coreCount + 1),
        };
        drawing = drawPlan(inputOf({ ...attempt, cables: [...others, halfIn] }, { face }), drawing);
        expect(drawing.cables.slice(0, -1).map(({ line }) => line)).toEqual(lines);
      }
    },
  );

  it.each(models)("$scenario is drawn the same where its last cable was foreseen", ({ attempt, face }) => {
    const { before, count, inputWith } = plugging(attempt, face);
    const foreseen = drawPlan(inputWith(count), before);
    for (const coreCount of [count, 1]) {
      const input = inputWith(coreCount);
      const [drawn, expected] = [drawPlan(input, foreseen), drawPlan(input, before)];
      expect(drawn.cables.map(({ line }) => line)).toEqual(expected.cables.map(({ line }) => line));
      expect(drawn.cables.map(({ cores }) => cores)).toEqual(expected.cables.map(({ cores }) => cores));
      const all = (drawing: PlanDrawing) => ({ ...drawing, amiss: drawing.amiss(), cables: [] });
      if (coreCount === count) expect(all(drawn)).toEqual(all(expected));
    }
  });

  it.each(models)(
    "$scenario lies alike where the pins of its last cable come at once",
    ({ attempt, face }) => {
      const { before, count, inputWith } = plugging(attempt, face);
      let drawing = before;
      for (let coreCount = 1; coreCount <= count; coreCount += 1)
        drawing = drawPlan(inputWith(coreCount), drawing);
      const atOnce = drawPlan(inputWith(count), before);
      expect(atOnce.cables.map(({ line }) => line)).toEqual(drawing.cables.map(({ line }) => line));
    },
  );
});
