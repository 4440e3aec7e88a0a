import { expect } from "@playwright/test";
import { mkdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { publicSheetNames } from "../../shared/protocol/public-text.ts";
import type { BenchProcess } from "./bench-process.ts";
import { test } from "./bench-test.ts";
import { isClean, isReachedByKeyboard, signInAtDesk } from "./desk-page.ts";
import { startBenchWithPeople } from "./desk-people.ts";

const networkPort = 4794;
const network = `http://127.0.0.1:${networkPort}`;

let running: BenchProcess;
test.beforeAll(async () => {
  running = await startBenchWithPeople(networkPort);
});
test.afterAll(async () => {
  await running.stop();
});

test("anybody on the network reads the sheets without signing in, in both languages", async ({ page }) => {
  test.setTimeout(120_000);
  for (const name of publicSheetNames) {
    await page.goto(`${network}/public/${name}`);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await isClean(page, `public-${name}`);
  }
  await page.goto(`${network}/public`);
  await page.getByRole("link", { name: "Polski" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Ostrzeżenia");
  await isClean(page, "public-pl");
  await page.goto(`${network}/desk/`);
  await isClean(page, "sign-in");
  await page.getByRole("link", { name: "Polski" }).click();
  await page.getByRole("button", { name: "Zaloguj się" }).click();
  await expect(page.getByRole("alert")).toContainText("do siebie nie pasują");
  await isClean(page, "sign-in-pl");
});

test("the technician sees at the desk how the machine is, and nobody's work", async ({ page }) => {
  await signInAtDesk(page, `${network}/desk/`, "Ida Nowak");
  await expect(page.getByTestId("machine-chain")).toContainText("sound");
  await expect(page.getByTestId("machine-power")).toContainText("cannot be read here");
  await expect(page.getByTestId("machine-board")).toContainText("ready");
  await expect(page.getByTestId("page-live")).toHaveCount(0);
  await page.getByTestId("support-look").click();
  await expect(page.getByTestId("support-preview")).toContainText("lastEvents");
  await expect(page.getByTestId("support-preview")).not.toContainText("Nowak");
  const saving = page.waitForEvent("download");
  await page.getByTestId("support-save").click();
  const saved = await readFile(await (await saving).path(), "utf8");
  expect(saved).toBe(await page.getByTestId("support-preview").textContent());
  await expect(page.getByTestId("back-up-do")).toBeDisabled();
  const code = page.getByTestId("desk-address").getByRole("img");
  await expect(code).toHaveAttribute("data-qr", `${network}/desk/`);
  expect(await code.evaluate((svg) => (svg.getBoundingClientRect().width * 25.4) / 96)).toBeCloseTo(40, 1);
  const folder = join(running.dataFolder, "stick");
  await mkdir(folder);
  await page.getByTestId("keeping-folder").fill(folder);
  await page.getByTestId("keeping-folder").press("Tab");
  await page.getByTestId("back-up-do").click();
  await expect(page.getByTestId("task-done")).toBeVisible({ timeout: 20_000 });
  await page.getByTestId("back-ups").getByRole("radio").check();
  await page.getByTestId("restore-try").click();
  await expect(page.getByTestId("task-done")).toContainText("can be brought back", { timeout: 20_000 });
  await page.getByTestId("update-folder").fill(folder);
  await page.getByTestId("update-do").click();
  await expect(page.getByTestId("task-failed")).toContainText("no update", { timeout: 20_000 });
  await page.getByTestId("restore-ask").click();
  await isClean(page, "keeping");
  await isReachedByKeyboard(page);
  await page.goto(`${network}/desk/#/live`);
  await expect(page.getByTestId("machine")).toBeVisible();
});

test("a trainer brings a class in, agrees on large letters and prints badges", async ({ page }) => {
  test.setTimeout(120_000);
  await signInAtDesk(page, `${network}/desk/`, "Maud Perrin");
  await page.getByTestId("page-people").click();
  await expect(page.getByTestId("people")).toContainText("Bryony Cole");
  await expect(page.getByTestId("people").getByRole("rowheader").first()).toHaveText("Aled Rees");
  await page.getByTestId("people-by-name").press("Enter");
  await expect(page.getByTestId("people").getByRole("rowheader").first()).toHaveText("Noor Haddad");
  const csv = (text: string) => ({ name: "class.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  await page.getByTestId("class-file").setInputFiles(csv("name,centre number\nLeo Ashdown,12\n,13\n"));
  await expect(page.getByTestId("class-faults")).toContainText("line 3");
  await isClean(page, "class-faults");
  await page.getByTestId("class-file").setInputFiles(csv("name,centre number\nLeo Ashdown,12\nMia Fox,13\n"));
  await expect(page.getByTestId("class-preview")).toContainText("Mia Fox");
  await expect(page.getByTestId("people")).not.toContainText("Mia Fox");
  await isClean(page, "class-preview");
  await page.getByTestId("class-do").click();
  await expect(page.getByTestId("people")).toContainText("Mia Fox");

  await page.getByRole("button", { name: "What is agreed with Mia Fox" }).click();
  await page.getByTestId("adjust-large").check();
  await page.getByTestId("adjust-time").selectOption("25");
  await isClean(page, "adjust");
  await page.getByTestId("adjust-do").click();
  await expect(page.getByTestId("people")).toContainText("25 % more time, large letters");
  await isReachedByKeyboard(page);

  await page.getByRole("checkbox", { name: "Badge for Leo Ashdown" }).check();
  await page.getByRole("checkbox", { name: "Badge for Mia Fox" }).check();
  await page.getByTestId("badges-make").click();
  await expect(page.getByTestId("badge-sheet").getByRole("img")).toHaveCount(2);
  await isClean(page, "badges");
  await page.emulateMedia({ media: "print" });
  const sideMm = await page
    .getByRole("img", { name: "Badge code of Mia Fox" })
    .evaluate((svg) => (svg.getBoundingClientRect().width * 25.4) / 96);
  expect(sideMm).toBeCloseTo(32, 1);
  await expect(page.getByTestId("badges-close")).toBeHidden();
  await page.emulateMedia({ media: "screen" });
  await page.getByTestId("badges-close").click();

  await page.getByTestId("page-debrief").click();
  await expect(page.getByTestId("debrief")).toContainText("Too few of us");
  await isClean(page, "debrief");
});

test("a technician holds and erases a learner at the desk", async ({ page }) => {
  await signInAtDesk(page, `${network}/desk/#/people`, "Ida Nowak");
  await page.goto(`${network}/desk/#/people`);
  await page.getByRole("button", { name: "Hold what is kept of Leo Marsh" }).click();
  await expect(page.getByRole("button", { name: "Erase Leo Marsh" })).toBeDisabled();
  await page.getByRole("button", { name: "End the hold of Leo Marsh" }).click();
  await page.getByRole("button", { name: "Erase Leo Marsh" }).click();
  await isClean(page, "erase");
  await page.getByTestId("erase-do").click();
  await expect(page.getByTestId("people")).not.toContainText("Leo Marsh");
});
