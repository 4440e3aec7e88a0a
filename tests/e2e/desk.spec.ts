import { expect } from "@playwright/test";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { logFile } from "../../server/folders.ts";
import { openForWriting } from "../../server/store/open-database.ts";
import { changeLogged } from "../change-logged.ts";
import { letters, readPdf } from "../read-pdf.ts";
import { BenchLink } from "./bench-link.ts";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";
import { isClean, isReachedByKeyboard, signInAtDesk } from "./desk-page.ts";
import { learners, startBenchWithPeople } from "./desk-people.ts";

const networkPort = 4793;
const deskAddress = `http://127.0.0.1:${networkPort}/desk/`;

let running: BenchProcess;
let link: BenchLink;
test.beforeAll(async () => {
  running = await startBenchWithPeople(networkPort);
  link = new BenchLink(running.address);
});
test.afterAll(async () => {
  link.close();
  await running.stop();
});

/** Each of the class practises and hands a ring in that does not close. */
async function practise(): Promise<void> {
  await link.seen(({ state }) => state === "ready");
  for (const at of learners.keys()) {
    await link.does("sign-in", { by: "badge", badge: `L-${at + 2}` });
    await link.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await link.does("accept-caution", {});
    await link.does("go-to-step", { step: "wire" });
    const open = [
      ["way-1.a", "socket-1.a"],
      ["socket-1.b", "socket-2.a"],
    ] as const;
    await link.plugCables(open, 2.5);
    await link.seen(({ attempt }) => attempt?.cables.length === 2);
    // It is taken once the board has come to rest.
    await expect(() => link.does("hand-in", {})).toPass();
    await link.does("leave-attempt", {});
    // The next one finds the board as it is meant to be.
    await link.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await link.does("accept-caution", {});
    await link.does("pull", { what: "all" });
    await link.seen(({ attempt }) => attempt?.cables.length === 0);
    await link.does("leave-attempt", {});
    await link.does("sign-out", {});
  }
}

/** Assessed work: a ring of which one line core was left out, and which is handed in so. */
async function wire(): Promise<void> {
  await link.seen(({ state }) => state === "ready");
  await link.does("sign-in", { by: "badge", badge: "L-2" });
  await link.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
  await link.does("accept-caution", {});
  await link.does("go-to-step", { step: "wire" });
  const ringAndSpur = [
    ["way-1.a", "socket-1.a"],
    ["socket-1.b", "socket-2.a"],
    ["socket-2.b", "way-1.b"],
    ["socket-1.c", "socket-3.a"],
  ] as const;
  await link.plugCables(ringAndSpur, 2.5);
  await link.seen(({ attempt }) => attempt?.cables.length === 4);
  await link.does("pull", {
    what: "lead",
    contactA: "socket-1.b.L",
    contactB: "socket-2.a.L",
  } as never);
}

/** What `npm run verify` says of a log. */
function verified(file: string): { status: number | null; said: string } {
  const { status, stdout } = spawnSync(process.execPath, ["server/commands/run.mjs", "verify", file], {
    encoding: "utf8",
  });
  return { status, said: stdout };
}

test("a learner hands in an open ring; the assessor sees it arrive, replays, decides against the proposal, seals; the learner sees it only then", async ({
  page,
  browser,
}) => {
  test.setTimeout(240_000);
  await page.setViewportSize({ width: 1280, height: 800 });
  await practise();
  await page.goto(running.address);
  const screen = new BenchScreen(page);
  await wire();

  const desk = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await signInAtDesk(desk, deskAddress, "Olwen Tansley");
  await expect(desk.getByTestId("live-work")).toContainText("Bryony Cole");
  await expect(desk.getByTestId("live-work").getByTestId("desk-findings")).toContainText("ring");
  await link.does("ready", {});
  await expect(desk.getByRole("region", { name: "Ready for check" }).getByRole("row")).toHaveCount(2);
  await isClean(desk, "live");
  await desk.getByTestId("page-debrief").click();
  await expect(desk.getByTestId("debrief").getByRole("listitem").first()).toContainText("most of us");
  for (const name of learners) await expect(desk.getByTestId("debrief")).not.toContainText(name);
  await isClean(desk, "debrief-with-data");
  await desk.getByTestId("page-live").click();

  await link.does("hand-in", {});
  await screen.get("key-own-work").click();
  await expect(screen.get("own-work-declared")).toBeVisible();
  await expect(desk.getByTestId("to-decide").getByRole("link", { name: "Bryony Cole" })).toBeVisible();
  await desk.getByTestId("to-decide").getByRole("link", { name: "Bryony Cole" }).click();
  await expect(desk.getByTestId("own-work")).toContainText("says that the work is their own");

  await desk.getByTestId("replay-first").click();
  await expect(desk.getByTestId("replay-moment")).toContainText("Moment 1 of");
  for (let count = 0; count < 12 && (await desk.getByTestId("replay-finding").isEnabled()); count += 1)
    await desk.getByTestId("replay-finding").click();
  await expect(desk.getByTestId("desk-findings")).toContainText("ring");
  await expect(desk).toHaveURL(/at=\d+/);
  await isClean(desk, "replay");

  await desk.getByTestId("seen").fill("Left one core out between two sockets.");
  await desk.getByTestId("observe").click();
  await expect(desk.getByTestId("observation")).toContainText("Left one core out");
  for (const [criterion, answer] of [
    ["safe", "not-yet"],
    ["right", "not-yet"],
    ["as-asked", "not-yet"],
    ["tested", "met"],
    ["way-of-working", "met"],
  ] as const) {
    await desk.getByTestId(`answer-${criterion}`).selectOption(answer);
    for (const tick of ["isValid", "isAuthentic", "isCurrent", "isSufficient"])
      await desk.getByTestId(`${tick}-${criterion}`).check();
  }
  await desk.getByTestId("decide").click();
  await expect(desk.getByTestId("desk-refusal")).toContainText("Criterion 1");
  await desk.getByTestId("reason-safe").fill("One leg would carry it all.");
  await desk.getByTestId("says").fill("Look at the second socket again.");
  await isClean(desk, "decide");
  await isReachedByKeyboard(desk);
  await desk.getByTestId("decide").click();
  await expect(desk.getByTestId("decision")).toContainText("not yet");
  await expect(screen.get("outcome")).toHaveCount(0);
  await desk.getByTestId("seal").click();
  await expect(desk.getByTestId("seal-state")).toContainText("Sealed");
  await expect(screen.get("outcome")).toHaveCount(0);
  await desk.getByTestId("release").click();
  await expect(screen.get("outcome")).toContainText("Look at the second socket again.");
  await expect(screen.get("outcome")).toContainText("One leg would carry it all.");
  await isClean(desk, "decided");

  const told = await desk.request.get(
    `http://127.0.0.1:${networkPort}/evidence/attempts.csv?decision=not-yet`,
  );
  const [, line = ""] = (await told.text()).split("\r\n");
  expect(line).toContain("Bryony Cole");
  expect(line).toContain(",not-yet,");
  const statements = await desk.request.get(
    `http://127.0.0.1:${networkPort}/evidence/statements-2.0.0.jsonl?mode=assessed`,
  );
  const verbs = (await statements.text())
    .trimEnd()
    .split("\n")
    .map((one) => (JSON.parse(one) as { verb: { id: string }; result: object }).verb.id.split("/").at(-1));
  expect(verbs).toEqual(["completed", "failed"]);
  const saving = desk.waitForEvent("download");
  await desk.getByTestId("save-pdf").click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe("record.pdf");
  await expect(desk.getByTestId("save-pdf-end")).toHaveText("Saved.");
  const pdf = await readPdf(new Uint8Array(readFileSync(await saved.path())));
  for (const said of [
    "Bryony Cole",
    "L missing",
    "not yet, by Olwen Tansley",
    "One leg would carry it all.",
    "Look at the second socket again.",
    "Left one core out between two sockets.",
  ])
    expect(pdf.text).toContain(letters(said));

  await desk.getByTestId("beside-here").click();
  await expect(desk.getByTestId("beside-differences")).toContainText("The wiring is the same.");
  await desk.getByTestId("replay-first").click();
  await expect(desk.getByTestId("beside-differences")).toContainText("only right");
  await isClean(desk, "beside");
  const [, theirs = ""] = await desk
    .getByTestId("beside-work")
    .getByRole("option", { name: "Aled Rees" })
    .evaluateAll((options) => ["", (options as HTMLOptionElement[]).at(-1)?.value ?? ""]);
  await desk.getByTestId("beside-work").selectOption(theirs);
  await expect(desk.getByTestId("beside")).toContainText("Aled Rees");
  await expect(desk.getByTestId("beside-differences")).toContainText(
    "only right: Socket outlet 1 a – Way 1 a",
  );
  await desk.getByTestId("replay-speed").selectOption("64");
  await desk.getByTestId("replay-play").click();
  await expect(desk.getByTestId("replay-moment")).not.toContainText("Moment 1 of");

  const verifier = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await signInAtDesk(verifier, deskAddress, "Piotr Lasek");
  await verifier.getByTestId("page-sample").click();
  await verifier.getByTestId("seed").focus();
  await verifier.keyboard.type("2026-11");
  await verifier.getByTestId("sample-assessor").selectOption("Olwen Tansley");
  await verifier.getByTestId("sample-scenario").selectOption("The first spur");
  await verifier.getByTestId("draw").press("Enter");
  await expect(verifier.getByTestId("sample")).toContainText("2026-11");
  await expect(verifier.getByTestId("sample")).toContainText("Decided by: Olwen Tansley");
  await isClean(verifier, "sample");
  const work = verifier.getByRole("link", { name: "Bryony Cole" });
  const address = (await work.getAttribute("href")) ?? "";
  await verifier.goto(`${deskAddress}${address}?blind=1`);
  await expect(verifier.getByTestId("answer-safe")).toBeVisible();
  await expect(verifier.getByTestId("decision")).toHaveCount(0);
  await isClean(verifier, "blind");
  await verifier.goto(deskAddress + address);
  await verifier.getByTestId("review-answer").focus();
  await verifier.keyboard.press("Tab");
  await verifier.keyboard.press("Tab");
  await verifier.keyboard.press("Enter");
  await expect(verifier.getByTestId("review")).toContainText("agreed");
  await isClean(verifier, "reviewed");

  await verifier.getByTestId("page-attempts").click();
  await verifier.getByTestId("find-learner").fill("nobody of this name");
  await verifier.getByTestId("find").click();
  await expect(verifier.getByTestId("nothing-found")).toBeVisible();
  await verifier.getByTestId("find-learner").fill("bryony");
  await verifier.getByTestId("find").click();
  await expect(verifier.getByRole("link", { name: "Bryony Cole" })).toHaveCount(3);
  await expect(verifier.getByRole("link", { name: "Aled Rees" })).toHaveCount(0);
  await verifier.getByTestId("sort-started").click();
  await expect(verifier.getByRole("columnheader", { name: "Started" })).toHaveAttribute(
    "aria-sort",
    "ascending",
  );
  await isClean(verifier, "attempts");
  await isReachedByKeyboard(verifier);

  const log = openForWriting(logFile(running.dataFolder));
  const copy = join(running.dataFolder, "copy.db");
  log.exec(`VACUUM INTO '${copy}'`);
  log.close();
  expect(verified(copy)).toMatchObject({ status: 0, said: expect.stringContaining("The log is sound") });
  const changed = openForWriting(copy);
  const sequence = changeLogged(changed, "decided", "One leg", "One lag");
  changed.close();
  expect(verified(copy)).toMatchObject({ status: 1, said: expect.stringContaining(`event ${sequence}`) });
});
