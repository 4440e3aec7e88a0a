import { describe, expect, it } from "vitest";
import type { ContactId, StationId } from "../../shared/board/ids.ts";
import type { TestView } from "../../shared/protocol/test-view.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { attempt, bench, sampleView } from "./views.ts";

const test = (red: string | null, black: string | null): TestView => ({
  way: "way-1" as StationId,
  kind: "ring",
  supply: "off",
  meter: {
    dial: "low-ohms",
    testV: 500,
    rcdMultiple: 1,
    red: red as ContactId | null,
    black: black as ContactId | null,
    isNulled: true,
    hasLongLead: false,
    shows: { shows: "open" },
  },
  ends: null,
  link: null,
  parts: [],
  switches: [],
  slots: [],
  liveSlots: [],
  others: [],
  pastCount: 0,
});
const viewWith = (red: string | null, black: string | null) =>
  bench({ attempt: attempt({ step: "test", test: test(red, black) }) });
const marks = (contact: string): (string | undefined)[] =>
  [...byId(`contact-${contact}`).querySelectorAll("svg[data-probe]")].map(
    (mark) => (mark as SVGElement).dataset["probe"],
  );
const spoken = (contact: string): string => byId(`contact-${contact}`).getAttribute("aria-label") ?? "";

describe("the probes of the meter", () => {
  it("are drawn and spoken where they stand on a station that is opened, each told from the other by its shape", async () => {
    const [, large] = panels;
    const { screen, show } = await showBench({ ...large, view: viewWith("socket-1.a.L", "socket-1.b.E") });
    await expect.element(screen.getByTestId("meter-display")).toBeVisible();
    byId("key-face").click();
    await screen.getByTestId("station-socket-1").click();
    await expect.element(screen.getByTestId("contact-socket-1.a.L")).toBeVisible();
    expect(marks("socket-1.a.L")).toEqual(["red"]);
    expect(marks("socket-1.b.E")).toEqual(["black"]);
    expect(marks("socket-1.a.N")).toEqual([]);
    expect(spoken("socket-1.a.L")).toContain("Red");
    expect(spoken("socket-1.a.N")).not.toContain("Red");
    const fillOf = (contact: string) =>
      getComputedStyle(byId(`contact-${contact}`).querySelector("svg[data-probe] path")!).fill;
    expect(fillOf("socket-1.a.L")).not.toBe(fillOf("socket-1.b.E"));
    await show({ view: viewWith(null, "socket-1.a.L") });
    expect(marks("socket-1.a.L")).toEqual(["black"]);
    expect(marks("socket-1.b.E")).toEqual([]);
  });
});

describe("the probe leads of a real board", () => {
  it("are drawn where the board senses them, and the end of a lead that is meant is asked for by a key", async () => {
    const view = sampleView("test-leads");
    const { screen, sent, show } = await showBench({ ...panels[0], view });
    await expect.element(screen.getByTestId("meter-display")).toHaveTextContent("Say which end");
    const touched = (probe: string) =>
      [...document.querySelectorAll(`[data-sensed="${probe}"] [data-touched]`)].map(
        (one) => (one as SVGElement).dataset["touched"],
      );
    expect(touched("red").toSorted()).toEqual(["socket-1.a.L", "way-1.a.L"]);
    expect(touched("black")).toEqual(["socket-2.front.N"]);
    // Beside the plates of the plan too, for the eye and the ear.
    const marked = [...document.querySelectorAll<HTMLElement>("[data-mark]")].map(
      (one) => one.dataset["mark"],
    );
    expect(marked).toEqual(expect.arrayContaining(["socket-1", "way-1", "socket-2"]));
    expect(byId("station-socket-2").getAttribute("aria-label")).toContain("Black");
    // In a hunt they stay beside the plates while the fault is named.
    const hunt = { faultCount: 1, named: [] };
    await show({ view: { ...view, attempt: { ...view.attempt!, hunt } } });
    await screen.getByTestId("meter-tab-fault").click();
    expect(document.querySelector('[data-mark="socket-2"]')).not.toBeNull();
    await screen.getByTestId("meter-tab-meter").click();
    await screen.getByTestId("meter-end-way-1.a.L").click();
    expect(sent).toEqual([{ name: "meter-act", command: { what: "probe", probe: "red", at: "way-1.a.L" } }]);
    // Once it is said, what the meter shows is shown.
    const test = view.attempt!.test!;
    const said = { ...test, meter: { ...test.meter, red: "way-1.a.L" as ContactId } };
    await show({ view: { ...view, attempt: { ...view.attempt!, test: said } } });
    expect(document.querySelector('[data-testid^="meter-end-"]')).toBeNull();
    await expect.element(screen.getByTestId("meter-display")).toHaveTextContent(/a probe touches nothing/i);
  });
});
