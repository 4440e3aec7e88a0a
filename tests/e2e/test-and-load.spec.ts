import { expect } from "@playwright/test";
import type { BenchProcess } from "./bench-process.ts";
import type { BenchLink } from "./bench-link.ts";
import { test } from "./bench-test.ts";
import { deadTestsOverLink } from "./dead-tests-over-link.ts";
import { BenchScreen, panelsOfRun } from "./bench-screen.ts";
import { pointsOfRing, ringAndSpurs } from "./ring-and-spurs.ts";
import { TestScreen } from "./test-screen.ts";

const stationOf = (entry: string): string => entry.slice(0, entry.lastIndexOf("."));

/** Wires the ring by a size, two taps a cable. */
const wireByTouch = async (bench: BenchScreen, csaMm2: number): Promise<void> => {
  await bench.takeCable(csaMm2);
  for (const [at, [from, to]] of ringAndSpurs.entries()) {
    await bench.wireByTaps(stationOf(from), stationOf(to));
    await bench.expectCableCount(at + 1);
  }
};

/** Goes to the step Test and nulls the leads. */
const goToTest = async (bench: BenchScreen): Promise<TestScreen> => {
  const screen = await TestScreen.open(bench);
  await screen.nullLeads();
  return screen;
};

/** Takes out, or puts in again, everything at the points that a test must not go through. */
const touchEachPart = async (bench: BenchScreen): Promise<void> => {
  for (const part of await bench.page.locator('[data-testid^="meter-part-"]').all()) await part.tap();
};

/** Puts a lead back on the board's face, where the station of its first contact is open since it was pulled. */
const putLeadBack = async (bench: BenchScreen, one: string, other: string): Promise<void> => {
  await bench.get("key-face").tap();
  await bench.get(`station-${other.split(".")[0]}`).tap();
  await bench.get(`contact-${one}`).tap();
  await bench.get(`contact-${other}`).tap();
  await expect(bench.get(`contact-${other}`)).toHaveAccessibleName(/leads to/i);
  await bench.get("key-face").tap();
};

/** All dead tests by touch, the last reading of each on record. */
const testDead = async (screen: TestScreen): Promise<void> => {
  await screen.ends("released");
  for (const role of ["L", "N", "E"]) {
    await screen.probe(`way-1.a.${role}`, `way-1.b.${role}`);
    await screen.write("ring-step-1", await screen.number());
  }
  for (const [state, step, role] of [
    ["crossed-N", "ring-step-2", "N"],
    ["crossed-E", "ring-step-3", "E"],
  ] as const) {
    await screen.ends(state);
    for (const point of pointsOfRing) {
      await screen.probe(`${point}.front.L`, `${point}.front.${role}`);
      await screen.write(step, await screen.number());
      if (role === "E") await screen.write("polarity", null);
    }
  }
  await screen.ends("joined");
  await touchEachPart(screen.bench);
  await screen.tab("meter");
  await screen.get("dial-insulation").tap();
  for (const [one, two] of ["LN", "LE", "NE"] as const) {
    await screen.probe(`way-1.a.${one}`, `way-1.a.${two}`);
    await screen.get("press").tap();
    await expect(screen.get("display")).toContainText(">999");
    await screen.write(null, "over");
  }
};

const switchOn = async (screen: TestScreen): Promise<void> => {
  await screen.tab("way");
  await screen.get("energise").tap();
  await expect(screen.get("supply")).toHaveText("On (simulated)");
};

/** The loop at a point and what the RCD does at its rating, which switches the circuit off. */
const testLive = async (screen: TestScreen): Promise<void> => {
  await screen.tab("meter");
  await screen.get("dial-loop").tap();
  await screen.probe("socket-2.front.L", "socket-2.front.E");
  await expect(screen.get("display")).toContainText("fault current");
  await screen.write("zs", await screen.number());
  await screen.get("dial-rcd").tap();
  await screen.get("multiple-1").tap();
  await screen.get("press").tap();
  await expect(screen.get("display")).toContainText("ms");
  await screen.write("rcd-one", await screen.number());
  await screen.tab("way");
  await expect(screen.get("supply")).toContainText("RCD has tripped");
};

/** Every value on the printed record is said to be simulated. */
const expectPrinted = async (screen: TestScreen): Promise<void> => {
  await screen.bench.page.emulateMedia({ media: "print" });
  await expect(screen.get("sheet")).toBeVisible();
  const printed = await screen.get("sheet").locator("td:last-child").allInnerTexts();
  const recorded = printed.filter((text) => text.includes("·") || text.includes("Pass"));
  expect(recorded).toHaveLength(23);
  for (const text of recorded) expect(text).toContain("simulated");
  await screen.bench.page.emulateMedia({ media: "screen" });
};

/** Switches appliances on at the step Load and lets two hours pass, ten minutes a tap. */
const run = async (bench: BenchScreen, appliances: readonly string[]): Promise<void> => {
  await bench.get("step-load").tap();
  await bench.get("screen-load").waitFor();
  for (const id of appliances) {
    await bench.get(`load-appliance-${id}`).tap();
    await expect(bench.get(`load-appliance-${id}`)).toHaveAttribute("aria-pressed", "true");
  }
  for (let min = 10; min <= 120; min += 10) {
    await bench.get("load-forth").tap();
    await expect(bench.get("load-clock")).toContainText(`${min} of 120`);
  }
};

test.describe.configure({ mode: "parallel" });

for (const { name, ...viewport } of panelsOfRun)
  test.describe(`the steps Test and Load at ${name}`, () => {
    test.use({ viewport, hasTouch: true, contextOptions: { reducedMotion: "reduce" } });
    test.setTimeout(300_000);
    let running: BenchProcess;
    let link: BenchLink;
    test.beforeEach(({ workshop }) => {
      ({ running, link } = workshop);
    });

    test("a core open at a socket outlet is found and mended, the ring tested, energised and tested live; kettle and heater share the legs, nothing trips", async ({
      page,
    }) => {
      const bench = new BenchScreen(page);
      await bench.openTask(running.address, "ring-and-spurs");
      await wireByTouch(bench, 2.5);
      await bench.pullLead("socket-1", "socket-1.b.N");
      const screen = await goToTest(bench);
      await bench.get("step-load").tap({ force: true });
      await expect(bench.get("refusal")).toContainText("the circuit is off");
      await screen.tab("way");
      await screen.get("energise").tap();
      await expect(bench.get("refusal")).toContainText("It stays off");
      await touchEachPart(bench);
      await screen.ends("released");
      await screen.probe("way-1.a.L", "way-1.b.L");
      expect(Number(await screen.number())).toBeLessThan(1);
      await screen.probe("way-1.a.N", "way-1.b.N");
      await expect(screen.get("display")).toContainText(">");
      await bench.get("step-wire").tap();
      await putLeadBack(bench, "socket-1.b.N", "socket-2.a.N");
      await bench.get("step-test").tap();
      await screen.tab("way");
      await touchEachPart(bench);
      await testDead(screen);
      await screen.tab("record");
      await expect(screen.get("slot-ring-step-1-L")).toContainText("right");
      await expect(screen.get("record").locator(".wrong")).toHaveCount(0);
      await switchOn(screen);
      await testLive(screen);
      await expectPrinted(screen);
      await switchOn(screen);

      await run(bench, ["socket-1/kettle", "socket-2/heater"]);
      await bench.get("load-tab-numbers").tap();
      await expect(bench.get("load-device-way-1")).toContainText("holds");
      const legs = await bench.get("load-legs").innerText();
      const shares = [...legs.matchAll(/(\d+) %/g)].map(([, percent]) => Number(percent));
      expect(shares).toHaveLength(2);
      expect(shares[0]! + shares[1]!).toBe(100);
      expect(Math.min(...shares)).toBeGreaterThan(15);
      await bench.get("load-tab-heat").tap();
      await expect(bench.get("load-facts")).toContainText("Nothing opens in the two hours.");
      await expect(bench.get("load-facts")).toContainText("within 70 °C");
      await expect(bench.get("load-plot").locator("canvas")).toBeVisible();
      await expect(bench.get("load-table").locator("tbody tr")).toHaveCount(13);
    });

    test("legs of 1.5 mm² overheat in the plot while the B32 holds", { tag: "@sweep" }, async ({ page }) => {
      const bench = new BenchScreen(page);
      await bench.openTask(running.address, "ring-and-spurs");
      await wireByTouch(bench, 1.5);
      await TestScreen.open(bench);
      // The tests by touch are those of the ring above.
      await deadTestsOverLink(link, pointsOfRing);
      await run(bench, ["socket-1/kettle", "socket-1/heater", "socket-2/fan-heater"]);
      await bench.get("load-tab-numbers").tap();
      await expect(bench.get("load-device-way-1")).toContainText("holds");
      await bench.get("load-tab-heat").tap();
      await expect(bench.get("load-facts")).toContainText("does not protect this cable");
      await expect(bench.get("load-plot").locator("canvas")).toBeVisible();
      const last = await bench.get("load-table").locator("tbody tr").last().locator("td").first().innerText();
      expect(Number(last.replace(/\D/g, ""))).toBeGreaterThan(70);
    });
  });
