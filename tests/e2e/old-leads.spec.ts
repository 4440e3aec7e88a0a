import { expect } from "@playwright/test";
import { BenchScreen, panels } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

test.use({ viewport: panels[0] });
test.beforeEach(({ page, workshop }) => page.goto(workshop.running.address));

const twoCables: readonly (readonly [string, string])[] = [
  ["way-1", "socket-1"],
  ["socket-1", "socket-2"],
];

const signIn = ({ page }: BenchScreen, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).tap();

const start = async (bench: BenchScreen, scenario: string): Promise<void> => {
  await bench.get(`scenario-${scenario}`).tap();
  await bench.get("key-practice").tap();
};

const wireTwo = async (bench: BenchScreen): Promise<void> => {
  await bench.get("key-accept-caution").tap();
  await bench.get("step-wire").tap();
  for (const [at, [from, to]] of twoCables.entries()) {
    await bench.wireByTaps(from, to);
    await bench.expectCableCount(at + 1);
  }
};

const signOut = async (bench: BenchScreen): Promise<void> => {
  await bench.get("key-menu").tap();
  await bench.get("key-sign-out").tap();
  await bench.get("screen-sign-in").waitFor();
};

test("leads of somebody before are the first line of the next task, with the key that clears them", async ({
  page,
}) => {
  const bench = new BenchScreen(page);
  await bench.get("key-guest").tap();
  await start(bench, "first-spur");
  await wireTwo(bench);
  await signOut(bench);

  await signIn(bench, "Aleks Brandt");
  await start(bench, "first-spur");
  await bench.get("key-accept-caution").tap();
  await expect(bench.get("say")).toHaveText("Clear the board first. Old cables on it: 2.");
  await bench.get("key-clear-now").tap();
  await bench.get("key-yes").tap();
  await expect(bench.get("say")).toHaveText("Work out the circuit before you wire it.");
  await expect(bench.get("key-clear-now")).toHaveCount(0);
  await bench.get("step-wire").tap();
  await bench.expectCableCount(0);
});

test(
  "the list of what was there is where something was there, and nowhere else",
  { tag: "@sweep" },
  async ({ page }) => {
    const bench = new BenchScreen(page);
    await bench.get("key-guest").tap();
    await start(bench, "first-spur");
    await bench.get("key-accept-caution").tap();
    await expect(bench.get("key-found-list")).toHaveCount(0);
    await bench.get("key-menu").tap();
    await bench.get("key-leave").waitFor();
    await expect(bench.get("key-as-found")).toHaveCount(0);
    await bench.get("key-close").tap();
    await bench.leaveTask();

    await start(bench, "extend-a-ring");
    await bench.get("key-accept-caution").tap();
    await expect(bench.get("say")).toContainText("First wire what was there. Cables in: 0 of");
    await bench.get("key-found-list").tap();
    await bench.get("key-match").tap();
    await expect(bench.get("say")).not.toContainText("First wire what was there");
    await expect(bench.get("key-found-list")).toHaveCount(0);
    await bench.get("key-menu").tap();
    await expect(bench.get("key-as-found")).toBeVisible();
  },
);

test("a guest never sees the work of the guest before: it has ended, and its answers are gone", async ({
  page,
}) => {
  const bench = new BenchScreen(page);
  await bench.get("key-guest").tap();
  await start(bench, "first-spur");
  await wireTwo(bench);
  await bench.check();
  await expect(bench.findings().first()).toBeVisible();
  await signOut(bench);
  await expect(bench.get("work-kept")).toHaveCount(0);

  await bench.get("key-guest").tap();
  await bench.get("screen-scenarios").waitFor();
  await start(bench, "first-spur");
  await expect(bench.get("screen-caution")).toBeVisible();
  await bench.get("key-accept-caution").tap();
  await expect(bench.get("say")).toContainText("Clear the board first.");
  await bench.get("step-wire").tap();
  await expect(bench.findings()).toHaveCount(0);
});

test("work that waits for a check is never ended by another's start without a yes", async ({ page }) => {
  const bench = new BenchScreen(page);
  const readyLine = "Ready for a check. Leave the board as it is.";
  const waits = () => expect(bench.get("say")).toHaveText(readyLine);
  await signIn(bench, "Aleks Brandt");
  await start(bench, "first-spur");
  await wireTwo(bench);
  // The board settles first: a tap before that is told to try again.
  await expect(async () => {
    await bench.get("key-menu").tap();
    await bench.get("key-ready").tap();
    await expect(bench.get("say")).toHaveText(readyLine, { timeout: 1_000 });
  }).toPass();
  await signOut(bench);

  await signIn(bench, "Bryony Cole");
  await start(bench, "first-spur");
  await expect(bench.get("refusal")).toContainText("waits for a check on this bench");
  await expect(bench.get("screen-scenarios")).toBeVisible();
  await signOut(bench);
  await signIn(bench, "Aleks Brandt");
  await waits();
  await bench.expectCableCount(twoCables.length);
  await signOut(bench);

  await signIn(bench, "Bryony Cole");
  await start(bench, "first-spur");
  await bench.get("key-end-waiting").tap();
  await expect(bench.get("screen-caution")).toBeVisible();
});
