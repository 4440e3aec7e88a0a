import { describe, expect, it, vi } from "vitest";
import { byId, panels, showBench } from "./show-bench.ts";
import { bench, sampleView } from "./views.ts";

const [small] = panels;
const on = (id: string) => document.querySelector(`[data-testid="${id}"]`);

/** What the file of the summary holds. */
const fileText = (): string =>
  decodeURIComponent((byId("progress-file") as HTMLAnchorElement).href.replace(/^[^,]*,/, ""));

describe("how a learner gets better", () => {
  it("shows what they did, which rules they keep and trip over, and begins the task that is next", async () => {
    const { screen, sent } = await showBench({ ...small, view: sampleView("progress") });
    byId("progress-open").click();
    const page = screen.getByTestId("progress-screen");
    await expect.element(page).toHaveTextContent("the ring is open: tripped over: 2, kept: 1");
    await expect.element(page).toHaveTextContent("a cable of a spur is too small");
    await expect.element(page).toHaveTextContent("26 Nov 2026 · The first spur · not yet met");
    await expect.element(page).toHaveTextContent("no certificate");
    // Read from the top down: what to do next stands first.
    const headings = [...page.element().querySelectorAll("h2, h3")].map((one) => one.textContent);
    expect(headings).toEqual([
      "Practise next",
      "Rules you still trip over",
      "Rules you keep",
      "What you did",
    ]);
    await screen.getByTestId("progress-next-ring-open").click();
    expect(sent).toEqual([{ name: "start-attempt", command: { scenario: "first-spur", mode: "practice" } }]);
  });

  it.each(["en", "pl"] as const)(
    "goes to paper and into a file with the same lines, in %s",
    async (language) => {
      const { screen } = await showBench({ ...small, view: sampleView("progress", { language }) });
      byId("progress-open").click();
      await expect.element(screen.getByTestId("progress-screen")).toBeVisible();
      const print = vi.spyOn(window, "print").mockImplementation(() => undefined);
      await screen.getByTestId("progress-print").click();
      expect(print).toHaveBeenCalledOnce();
      print.mockRestore();
      const lines = fileText()
        .split("\r\n")
        .filter((line) => line !== "");
      const paper = byId("progress-paper").textContent;
      for (const line of lines) expect(paper).toContain(line);
      expect(lines.filter((line) => line.startsWith("- "))).toHaveLength(5);
      expect(lines.join()).toContain("Bryony Cole");
      // What it is not is said where it may be mistaken for it.
      expect(lines.at(-1)).toMatch(/no certificate|świadectw|zaświadcz/);
      expect((byId("progress-file") as HTMLAnchorElement).download).toMatch(/\.txt$/);
    },
  );

  it("has no key where there is nothing to tell: a guest, or a learner's first time", async () => {
    const { screen } = await showBench({ ...small, view: bench({ person: { name: "", isGuest: true } }) });
    await expect.element(screen.getByTestId("scenario-first-spur")).toBeVisible();
    expect(on("progress-open")).toBeNull();
  });
});
