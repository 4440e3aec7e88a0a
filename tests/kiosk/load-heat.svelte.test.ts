import { describe, expect, it } from "vitest";
import type { CableId, StationId } from "../../shared/board/ids.ts";
import type { LoadView } from "../../shared/protocol/load-view.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { attempt, bench } from "./views.ts";
import { workshopFace } from "./faces.ts";

const cable = "socket-1.a~way-1.a" as CableId;
const way = "way-1" as StationId;
/** Two hours of a cable that comes to 96 °C by one bound a little before the other. */
const course = (forS: number): number[] =>
  Array.from({ length: 121 }, (_, min) => 30 + 66 * (1 - Math.exp((-min * 60) / forS)));
const load: LoadView = {
  way,
  isLive: true,
  nowS: 3600,
  appliances: [
    {
      id: "socket-1/kettle",
      station: "socket-1" as StationId,
      powerW: 3000,
      isOn: true,
      name: { en: "kettle", pl: "czajnik" },
    },
  ],
  cables: [{ id: cable, currentA: 24, ratingA: 20 }],
  devices: [{ station: way, currentA: 30, ratingA: 32, state: "closed" }],
  legs: [],
  heat: {
    cable,
    earlyC: course(300),
    lateC: course(900),
    longLifeC: 70,
    faultLimitC: 160,
    zone: { fromC: 70, toC: 92, forS: 3600 },
  },
  facts: {
    hottest: { cable, earlyC: 96, lateC: 96, state: "beyond" },
    over70S: 280,
    isUnprotected: true,
    untimed: [],
  } as unknown as NonNullable<LoadView["facts"]>,
};

/** How much of an element is seen without scrolling, 0 to 1. */
function seenShare(element: Element): number {
  const box = element.getBoundingClientRect();
  let [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, window.innerHeight)];
  for (let frame = element.parentElement; frame; frame = frame.parentElement) {
    if (!/auto|scroll|hidden/.test(getComputedStyle(frame).overflowY)) continue;
    const edge = frame.getBoundingClientRect();
    [top, bottom] = [Math.max(top, edge.top), Math.min(bottom, edge.bottom)];
  }
  return Math.max(0, bottom - top) / box.height;
}

describe.each(panels)("the plot of a cable's temperature on a $panel panel", ({ width, height }) => {
  it.each(["en", "pl"] as const)(
    "is seen whole without scrolling, and what it comes to beside it: %s",
    async (language) => {
      const view = bench({ language, board: workshopFace, attempt: attempt({ step: "load", load }) });
      const { screen } = await showBench({ width, height, view });
      await screen.getByTestId("load-tab-heat").click();
      await expect.element(screen.getByTestId("load-plot")).toBeVisible();
      await expect.poll(() => document.querySelector("canvas")).not.toBeNull();
      expect(seenShare(document.querySelector("canvas")!)).toBeGreaterThan(0.99);
      expect(seenShare(byId("load-facts").querySelector("p")!)).toBeGreaterThan(0.99);
      expect(document.querySelectorAll("canvas")).toHaveLength(1);
    },
  );
});

describe("an appliance at a point", () => {
  it.each([
    { language: "en", named: "Kettle" },
    { language: "pl", named: "Czajnik" },
  ] as const)("is spelt one way, of the task or of any house: $named", async ({ language, named }) => {
    const [stated] = load.appliances;
    const { name: _name, ...plain } = stated!;
    const general = { ...plain, id: "socket-1/of-any-house", appliance: "kettle" } as const;
    const both = { ...load, appliances: [stated!, general] };
    const view = bench({ language, board: workshopFace, attempt: attempt({ step: "load", load: both }) });
    await showBench({ view });
    const keys = both.appliances.map(({ id }) => byId(`load-appliance-${id}`));
    expect(keys.map((key) => key.querySelector("span")?.textContent)).toEqual([named, named]);
  });
});
