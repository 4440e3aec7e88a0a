import { expect, type Page } from "@playwright/test";
import { rmSync } from "node:fs";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import { BenchLink } from "./bench-link.ts";
import { type BenchProcess, newDataFolder, startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";
import { CentreOfBenches, centrePrograms } from "./centre-of-benches.ts";
import { isClean, signInAtDesk } from "./desk-page.ts";
import { startBenchWithPeople } from "./desk-people.ts";

const networkPort = 4798;
const leadPort = 4799;
const desk = `http://127.0.0.1:${networkPort}/desk/`;
const classList = [
  "name,centre number,badge",
  "Leo Ashdown,12,L-11",
  "Mia Fox,13,L-12",
  "Tomos Reed,14,L-13",
].join("\n");
const cable = { entryA: "way-1.a", entryB: "socket-1.a" } as ActMessage<"plug-cable">;

/** A bench of the workshop, with a second screen at it. */
interface Led {
  dataFolder: string;
  running: BenchProcess;
  link: BenchLink;
}

let lead: BenchProcess;
let centre: CentreOfBenches | undefined;
const benches: Led[] = [];

const startLed = async (dataFolder: string): Promise<Led> => {
  const running = await startBench({ dataFolder, ...(centre ? { centre: centre.address } : {}) });
  return { dataFolder, running, link: new BenchLink(running.address) };
};

// What the first go sets up, the second goes on with.
test.describe.configure({ mode: "serial" });
test.beforeAll(async () => {
  test.setTimeout(120_000);
  const folders = [newDataFolder(), newDataFolder(), newDataFolder()];
  const programs = centrePrograms();
  if (programs !== undefined) centre = await CentreOfBenches.open(programs, folders);
  lead = await startBenchWithPeople(networkPort, leadPort);
  for (const folder of folders) benches.push(await startLed(folder));
});
test.afterAll(async () => {
  for (const { link, running, dataFolder } of benches) {
    link.close();
    await running.stop();
    rmSync(dataFolder, { recursive: true, force: true });
  }
  await lead.stop();
  await centre?.close();
});

const tileOf = (page: Page, text: string) => page.getByTestId("bench-tile").filter({ hasText: text });

/** A learner takes their place by their badge and wires the first cable. */
const takePlace = async ({ link }: Led, badge: string): Promise<void> => {
  await link.does("sign-in", { by: "badge", badge });
  const { scenarios } = await link.seen((view) => view.scenarios.some(({ lacks }) => lacks.length === 0));
  const scenario = scenarios.find(({ id }) => id === "first-spur")?.id ?? "";
  await link.does("start-attempt", { scenario, mode: "practice" });
  await link.does("accept-caution", {});
  await link.does("go-to-step", { step: "wire" });
  await link.does("plug-cable", cable);
};

test("three benches are paired, get the class that was loaded once, and are led from one page", async ({
  page,
  browser,
}) => {
  test.setTimeout(120_000);
  const [first, second, third] = benches as [Led, Led, Led];

  // The class list is loaded once, at the lead.
  await signInAtDesk(page, desk, "Maud Perrin");
  await page.getByTestId("page-people").click();
  const file = { name: "class.csv", mimeType: "text/csv", buffer: Buffer.from(classList) };
  await page.getByTestId("class-file").setInputFiles(file);
  await page.getByTestId("class-do").click();
  await expect(page.getByTestId("people")).toContainText("Tomos Reed");

  // Each bench is paired by a code that is shown at the lead and typed there: one at its desk, the others without a page.
  await page.getByTestId("page-workshop").click();
  await page.getByTestId("begin-leading").click();
  await expect(page.getByTestId("leading-at")).toContainText(`or at 127.0.0.1:${leadPort}.`);
  const code = page.getByTestId("pair-code");
  const newCode = async (): Promise<string> => {
    const before = (await code.count()) > 0 ? await code.textContent() : "";
    await page.getByTestId("show-code").click();
    await expect(code).not.toHaveText(before ?? "");
    return (await code.textContent()) ?? "";
  };
  const atBench = await browser.newPage({ viewport: { width: 800, height: 480 }, hasTouch: true });
  const unlock = { by: "badge", badge: "SPURWISE-DEMO-TRAINER" } as const;
  await first.link.does("sign-in", unlock);
  await atBench.goto(`${first.running.address}/desk/#/workshop`);
  await atBench.getByTestId("join-address").fill(`127.0.0.1:${leadPort}`);
  await atBench.getByTestId("join-code").fill("2222-2222");
  await newCode();
  await atBench.getByTestId("join-do").click();
  await expect(atBench.getByTestId("desk-refusal")).toContainText("not the code that the lead shows");
  await atBench.getByTestId("join-code").fill((await newCode()).toLowerCase());
  await isClean(atBench, "lead-join");
  await atBench.getByTestId("join-do").click();
  await expect(atBench.getByTestId("led-by")).toContainText("linked");
  for (const { link } of [second, third]) {
    await link.does("sign-in", unlock);
    await link.does("lead-act", { what: "join", address: `127.0.0.1:${leadPort}`, code: await newCode() });
  }
  await expect(page.getByTestId("workshop")).toContainText("3 of 3 linked");

  await page.getByTestId("send-pack").click();
  await expect(page.getByTestId("pack-sent")).toContainText(
    /by Maud Perrin\. Learners: [1-9]\d*, tasks: [1-9]\d*\./,
  );
  await expect(page.getByTestId("pack-sent")).toContainText("in force: 3 of 3");

  // Three learners at work: who, at what, at which step, with their plans.
  await takePlace(first, "L-11");
  await takePlace(second, "L-12");
  await takePlace(third, "L-13");
  for (const name of ["Leo Ashdown", "Mia Fox", "Tomos Reed"]) {
    await expect(tileOf(page, name).getByTestId("bench-step")).toContainText("Wire");
    await expect(tileOf(page, name).getByRole("img", { name: "cables: 1" })).toBeVisible();
  }
  await second.link.does("ready", {});
  await expect(tileOf(page, "Mia Fox").getByTestId("bench-time")).toContainText("READY FOR CHECK");

  // Time for all, more for one, and everybody looks up.
  await page.getByTestId("minutes-all").fill("30");
  await page.getByTestId("time-all").click();
  await tileOf(page, "Leo Ashdown").getByTestId("bench-more").click();
  await expect(tileOf(page, "Leo Ashdown").getByTestId("bench-time")).toContainText(/3[45]:\d\d/);
  await expect(tileOf(page, "Tomos Reed").getByTestId("bench-time")).toContainText(/(29|30):\d\d/);
  await atBench.setViewportSize({ width: 800, height: 480 });
  const bench = new BenchScreen(atBench);
  await atBench.goto(first.running.address);
  await expect(bench.get("banner-time-left")).toContainText("Time left: 35 min");
  await keepPicture(atBench, "lead-bench-time");
  await page.getByTestId("freeze-all").click();
  await expect(bench.get("banner-frozen")).toContainText("Hands off, look at the trainer");
  await keepPicture(atBench, "lead-bench-frozen");
  await page.getByTestId("reset-all").click();
  await isClean(page, "lead-frozen");
  await page.getByTestId("reset-all").click();
  await expect(first.link.does("pull", { what: "all" })).rejects.toThrow("bench-frozen");
  await page.getByTestId("thaw-all").click();
  await expect(bench.get("banner-frozen")).toHaveCount(0);

  // One picture to the projector, without a name and without what is said of it.
  await tileOf(page, "Tomos Reed").getByTestId("bench-project").click();
  const [projector] = await Promise.all([
    page.waitForEvent("popup"),
    page.getByTestId("open-projector").click(),
  ]);
  await expect(projector.getByTestId("desk-plan")).toBeVisible();
  await expect(projector.locator("body")).not.toContainText("Tomos Reed");
  await isClean(projector, "lead-projector");
  await projector.close();

  // The next group: practice ends, whoever waits for a check keeps their place, and the page says why.
  await tileOf(page, "Tomos Reed").getByTestId("bench-reset").click();
  await tileOf(page, "Tomos Reed").getByTestId("bench-reset").click();
  await third.link.seen(({ attempt, person }) => attempt === null && person === null);
  await page.getByTestId("reset-all").click();
  await page.getByTestId("reset-all-do").click();
  await expect(tileOf(page, "Mia Fox").getByTestId("bench-refused")).toContainText("waits for a check");
  await takePlace(third, "L-13");
});

test("a bench that is killed comes back where it was, and its work is at the centre with the head of its own log", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await signInAtDesk(page, desk, "Maud Perrin");
  await page.getByTestId("page-workshop").click();
  const [, , third] = benches as [Led, Led, Led];
  await expect(tileOf(page, "Tomos Reed")).toBeVisible();
  const attempt = third.link.view?.attempt?.id ?? "";
  third.link.close();
  await third.running.cutPower();
  await expect(tileOf(page, "Tomos Reed").getByTestId("bench-away")).toContainText("NOT LINKED");
  const back = await startLed(third.dataFolder);
  benches[2] = back;
  await back.link.seen((view) => view.attempt?.id === attempt && view.attempt.cables.length === 1);
  await expect(page.getByTestId("workshop")).toContainText("3 of 3 linked");
  await back.link.does("plug-cable", { entryA: "socket-1.b", entryB: "socket-2.a" } as never);
  await expect(tileOf(page, "Tomos Reed").getByRole("img", { name: "cables: 2" })).toBeVisible();

  if (centre) {
    for (const { dataFolder } of benches) await centre.hasAll(dataFolder);
    expect(await centre.rowCountOf(attempt)).toBeGreaterThan(3);
    expect(await centre.verify()).toMatchObject({ code: 0 });
    await centre.changeRowOf(attempt);
    const after = await centre.verify();
    expect(after.code).toBe(1);
    expect(after.said).toContain(`First bad record: bench ${centre.idOf(back.dataFolder)}`);
  }

  // Without its lead a bench does all that it does with it.
  await lead.cutPower();
  const [first] = benches as [Led];
  await takePlace(first, "L-11");
  await first.link.does("plug-cable", { entryA: "socket-1.b", entryB: "socket-2.a" } as never);
  await first.link.does("ask-verdict", {});
  await first.link.seen(({ attempt }) => (attempt?.verdict ?? null) !== null);
  await first.link.does("leave-attempt", {});
});

const keepPicture = async (page: Page, name: string): Promise<void> => {
  const folder = process.env["SPURWISE_DESK_PICTURES"];
  if (folder) await page.screenshot({ path: `${folder}/${name}.png` });
};
