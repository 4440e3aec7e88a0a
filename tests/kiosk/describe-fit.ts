import { describe, expect, inject, it, vi } from "vitest";
import { partOf } from "../part-of.ts";
import { choosePanel } from "../../kiosk/panel/panel-profile.ts";
import { sizesFor } from "../../kiosk/panel/sizes.ts";
import { fitComplaints } from "./fit-check.ts";
import { pseudoText } from "./pseudo-text.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { sampleView, type ViewName, viewNames } from "./views.ts";

const turns = [
  { tongue: "English", more: {}, lengthen: undefined },
  { tongue: "Polish", more: { language: "pl" as const }, lengthen: undefined },
  { tongue: "texts 40 % longer", more: {}, lengthen: pseudoText },
  { tongue: "large letters", more: { isLarge: true }, lengthen: undefined },
];
const run = inject("run");

/** Once the screens that come later are there and laid out. */
const settled = async () => {
  await vi.dynamicImportSettled();
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 30)));
};

const measureFor = (width: number, height: number, isLarge: boolean) =>
  sizesFor(choosePanel("", width, height), isLarge);

const show = async (name: ViewName, width: number, height: number, turn: (typeof turns)[number]) => {
  const { frame } = await showBench({
    view: sampleView(name, turn.more),
    width,
    height,
    ...(turn.lengthen ? { lengthen: turn.lengthen } : {}),
  });
  await settled();
  return frame;
};

/** Every screen and what opens over it, on one panel, in each language and size of letters. */
export const describeFit = (one: (typeof panels)[number]): void => {
  const { panel, width, height } = one;
  for (const [at, turn] of turns.entries())
    describe(`on a ${panel} panel, ${turn.tongue}`, () => {
      const measure = measureFor(width, height, "isLarge" in turn.more);
      // Where not all are looked at, each is on both panels, in a turn of its own on each.
      const some = <T>(cases: readonly T[]): readonly T[] =>
        partOf(run, cases, turns.length, at + panels.indexOf(one));

      it.each(some(viewNames))("everything of %s can be read and touched", async (name) => {
        const frame = await show(name, width, height, turn);
        expect(fitComplaints(frame, measure)).toEqual([]);
      });

      it.each(
        some([
          { opens: ["key-menu"], view: "ring" },
          { opens: ["key-tray"], view: "ring" },
          { opens: ["key-menu", "key-words"], view: "ring" },
          { opens: ["key-badge"], view: "sign-in" },
          { opens: ["scenario-first-spur"], view: "scenarios" },
          { opens: ["key-hand-in"], view: "hand-in" },
          { opens: ["station-socket-1", "station-socket-1"], view: "ring-fault" },
          { opens: ["station-socket-2", "station-socket-2"], view: "wire" },
          { opens: ["station-fcu-1", "station-fcu-1"], view: "workshop" },
          { opens: ["cable-socket-1.b~socket-2.a"], view: "ring-fault" },
          { opens: ["key-face"], view: "workshop" },
          { opens: ["key-face", "station-socket-1"], view: "workshop" },
          { opens: ["key-face", "station-socket-1", "station-fcu-1"], view: "workshop" },
          { opens: ["meter-tab-fault", "hunt-kind-crossed-cores", "hunt-core-L"], view: "test" },
          { opens: ["meter-tab-fault", "hunt-kind-missing-link"], view: "test" },
          { opens: ["load-tab-heat"], view: "load" },
          { opens: ["load-tab-numbers"], view: "load" },
          { opens: ["progress-open"], view: "progress" },
          { opens: ["key-outcomes"], view: "outcomes" },
        ] as { opens: string[]; view: ViewName }[]),
      )("$view with $opens open can be read and touched", async ({ opens, view }) => {
        const frame = await show(view, width, height, turn);
        for (const id of opens) {
          byId(id).click();
          await settled();
        }
        expect(fitComplaints(frame, measure)).toEqual([]);
      });
    });
};

/** Every screen on panels that stand on their end. */
export const describeFitUpright = (): void => {
  describe.each([
    { panel: "7-inch", width: 480, height: 800, place: 0 },
    { panel: "10-inch", width: 800, height: 1280, place: 1 },
  ])("on a $panel panel that stands on its end", ({ width, height, place }) => {
    const measure = measureFor(width, height, false);

    it.each(partOf(run, viewNames, 2, place))("everything of %s can be read and touched", async (name) => {
      for (const turn of turns.slice(0, 2)) {
        const frame = await show(name, width, height, turn);
        expect([turn.tongue, fitComplaints(frame, measure)]).toEqual([turn.tongue, []]);
      }
    });
  });
};
