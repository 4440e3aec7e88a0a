import { expect, test } from "@playwright/test";
import { rmSync } from "node:fs";
import { publicSheetNames } from "../../shared/protocol/public-text.ts";
import { type BenchProcess, newDataFolder, startBench } from "./bench-process.ts";
import { isClean, signInAtDesk } from "./desk-page.ts";
import { setUpPeople } from "./desk-people.ts";

const networkPort = 4794;
const network = `http://127.0.0.1:${networkPort}`;

let dataFolder: string;
let running: BenchProcess;
test.beforeAll(async () => {
  dataFolder = newDataFolder();
  await setUpPeople(dataFolder);
  running = await startBench({ board: "small", dataFolder, networkPort });
});
test.afterAll(async () => {
  await running.stop();
  rmSync(dataFolder, { recursive: true, force: true });
});

test("anybody on the network reads the sheets without signing in, in both languages", async ({ page }) => {
  for (const name of publicSheetNames) {
    await page.goto(`${network}/public/${name}`);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    if (name !== "notices") await isClean(page, `public-${name}`);
  }
  await page.goto(`${network}/public`);
  await page.getByRole("link", { name: "Polski" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Ostrzeżenia");
  await isClean(page, "public-pl");
});

test("the technician sees at the desk how the machine is, and nobody's work", async ({ page }) => {
  await signInAtDesk(page, `${network}/desk/`, "Ida Nowak");
  await expect(page.getByTestId("machine-chain")).toContainText("sound");
  await expect(page.getByTestId("machine-power")).toContainText("cannot be read here");
  await expect(page.getByTestId("machine-board")).toContainText("ready");
  await expect(page.getByTestId("page-live")).toHaveCount(0);
  await isClean(page, "machine");
  await page.getByTestId("desk-language").click();
  await expect(page.getByTestId("machine-power")).toContainText("tutaj nie da się odczytać");
  await isClean(page, "machine-pl");
  await page.goto(`${network}/desk/#/live`);
  await expect(page.getByTestId("machine")).toBeVisible();
});
