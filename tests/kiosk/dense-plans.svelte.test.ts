import { describe, expect, it } from "vitest";
import { isTypefaceThere } from "../../kiosk/panel/typeface.svelte.ts";
import { planStages } from "./plan/plan-stages.ts";
import { showBench } from "./show-bench.ts";
import { sampleView } from "./views.ts";

interface OnPlan {
  name: string;
  rect: DOMRect;
}

const placed = (selector: string): OnPlan[] =>
  [...document.querySelectorAll<HTMLElement>(selector)].map((element) => ({
    name: element.dataset["testid"] ?? element.className,
    rect: element.getBoundingClientRect(),
  }));

const meets = (a: DOMRect, b: DOMRect): boolean =>
  a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5;

const plan = (): DOMRect => {
  const section = document.querySelector("section[aria-label^='Plan of the house']");
  if (!section) throw new Error("there is no plan");
  return section.getBoundingClientRect();
};

describe.each(planStages)("the plan as it stands on a panel of $panel", ({ width, height, stage }) => {
  it.each(["ring-fault", "marks", "workshop"] as const)(
    "writes the size of every cable, and nothing on anything: %s",
    async (name) => {
      const view = sampleView(name);
      await showBench({ view, width, height });
      await expect.poll(() => isTypefaceThere()).toBe(true);
      const pills = document.querySelectorAll<HTMLElement>(".pill");
      expect(pills).toHaveLength(view.attempt?.cables.length ?? 0);
      for (const pill of pills) expect(pill.textContent?.trim()).toMatch(/^(\d+(\.\d+)?|size\?)/);
      const all = placed("section .plate, section .pill, section .ends, section .mark, section .side");
      const complaints = all.flatMap((a, i) =>
        all.slice(i + 1).flatMap((b) => (meets(a.rect, b.rect) ? [`${a.name} lies on ${b.name}`] : [])),
      );
      expect(complaints).toEqual([]);
    },
  );

  it("has at least the area that every answer of every scenario is checked in", async () => {
    await showBench({ view: sampleView("ring"), width, height });
    // Letters of another typeface take more lines.
    await expect.poll(() => isTypefaceThere()).toBe(true);
    await expect.poll(() => plan().height).toBeGreaterThanOrEqual(stage.height);
    expect(plan().width).toBeGreaterThanOrEqual(stage.width);
  });
});

describe("a small panel on its side", () => {
  it("gives the plan at least 55 % of itself, whatever is in hand, and the caution one line", async () => {
    const { screen } = await showBench({ view: sampleView("ring") });
    const share = () => (plan().width * plan().height) / (800 * 480);
    expect(share()).toBeGreaterThanOrEqual(0.55);
    await screen.getByTestId("station-socket-3").click();
    expect(share()).toBeGreaterThanOrEqual(0.55);
    const caution = document.querySelector("[data-testid='caution-floor'] p");
    const lineHeight = Number.parseFloat(getComputedStyle(caution as Element).lineHeight);
    expect(caution?.getBoundingClientRect().height).toBeLessThan(lineHeight * 1.5);
  });
});
