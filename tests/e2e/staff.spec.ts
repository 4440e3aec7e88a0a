import { expect } from "@playwright/test";
import { startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

test.use({ viewport: { width: 800, height: 480 } });

test("a demonstration ends with its first person, who unlocks with their PIN, opens the desk and leaves the bench to the learner", async ({
  page,
}) => {
  const running = await startBench({ board: "small" });
  try {
    const bench = new BenchScreen(page);
    const digits = async (pin: string): Promise<void> => {
      for (const digit of pin) await bench.get(`key-pin-${digit}`).tap();
      await bench.get("key-pin-enter").tap();
    };
    await page.goto(running.address);
    await expect(bench.get("learner-demo-01")).toBeVisible();
    await bench.get("key-menu").tap();
    await bench.get("key-staff").tap();
    await bench.get("key-set-up").tap();
    for (const letter of "IDA")
      await bench.get("keyboard").getByRole("button", { name: letter, exact: true }).tap();
    await bench.get("key-name-enter").tap();
    await digits("482915");
    await bench.get("dialog-staff").getByRole("button", { name: "Ida, technician" }).tap();
    await expect(bench.get("learner-demo-01")).toHaveCount(0);
    await digits("999999");
    await expect(bench.get("staff-refusal")).toContainText("not right");
    await digits("482915");
    await expect(bench.get("staff-me")).toHaveText("Ida, technician");
    await bench.get("key-add-person").tap();
    await bench.get("key-role-learner").tap();
    for (const letter of "LEO")
      await bench.get("keyboard").getByRole("button", { name: letter, exact: true }).tap();
    await bench.get("key-name-enter").tap();
    await bench.get("key-desk").tap();
    await expect(bench.get("desk-me")).toHaveText("Ida, technician");
    await expect(bench.get("machine-chain")).toBeVisible();
    await bench.get("keeping-folder").tap();
    for (const letter of "/media")
      await bench.get("desk-keyboard").getByRole("button", { name: letter, exact: true }).tap();
    await expect(bench.get("keeping-folder")).toHaveValue("/media");
    await bench.get("desk-keyboard").getByRole("button", { name: "Close" }).tap();
    await bench.get("desk-sign-out").tap();
    await page.getByRole("button", { name: "Leo" }).tap();
    await bench.get("screen-scenarios").waitFor();
  } finally {
    await running.stop();
  }
});
