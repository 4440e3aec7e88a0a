import { expect } from "@playwright/test";
import { firstLoadKb, mostFirstLoadKb } from "../speed/first-load-kb.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

test("the bench screen loads less than 90 kB of script and style before a learner can sign in", () => {
  const kb = firstLoadKb();
  expect(kb).toBeGreaterThan(10);
  expect(kb).toBeLessThan(mostFirstLoadKb);
});

test("what is opened later is fetched once the first screen stands, and opens though nothing more can be fetched", async ({
  page,
  workshop,
}) => {
  const screen = new BenchScreen(page);
  const fetched: string[] = [];
  page.on("requestfinished", (request) => fetched.push(new URL(request.url()).pathname));
  await page.goto(workshop.running.address);
  const late = ["MakeDead", "PlanSheet", "Wire", "TestStep", "LoadStep", "HandIn", "HandedIn", "HealthSheet"];
  for (const name of [...late, "StaffSheet"])
    await expect
      .poll(() => fetched.filter((path) => path.startsWith(`/assets/${name}-`)), name)
      .not.toEqual([]);
  await page.route("**/assets/*", (route) => route.abort());
  await screen.chooseTask("build-a-radial");
});
