import { describe, expect, it } from "vitest";
import type { ContactId, StationId } from "../../shared/board/ids.ts";
import type { TestView } from "../../shared/protocol/test-view.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { attempt, bench } from "./views.ts";

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
