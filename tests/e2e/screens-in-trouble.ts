import { BenchLink } from "./bench-link.ts";
import { type BenchOptions, startBench } from "./bench-process.ts";
import type { BenchScreen } from "./bench-screen.ts";

type Look = (screen: string, link: BenchLink) => Promise<void>;

/** How long nobody touches the bench before it warns, and a little more. */
const idleMs = 181_000;

const withBench = async (
  options: BenchOptions,
  does: (address: string, link: BenchLink) => Promise<void>,
): Promise<void> => {
  const running = await startBench(options);
  const link = new BenchLink(running.address);
  try {
    await does(running.address, link);
  } finally {
    link.close();
    await running.stop();
  }
};

/**
 * Goes through what a learner sees only at times, each on a bench of its own: no board, a bad line, a damaged
 * record, assessed work, the tools for the technician, and the countdown before a bench that nobody touches locks.
 */
export const screensInTrouble = async (bench: BenchScreen, look: Look): Promise<void> => {
  const { page } = bench;

  await withBench({ lines: "gpio" }, async (address, link) => {
    await page.goto(address);
    await bench.get("screen-no-board").waitFor();
    await look("no board", link);
  });

  const faults = "socket-1.a.L:stuck-low,socket-2.b.N:dead-input";
  await withBench({ board: "workshop", faults }, async (address, link) => {
    await bench.openTask(address, "first-spur");
    await bench.get("banner-board-fault").waitFor();
    await look("wire, bad lines", link);
    await bench.checkUntil(bench.get("key-close-card"));
    await look("wire, bad lines and a check", link);
    await bench.get("key-close-card").tap();
    await bench.get("step-hand-in").tap();
    await bench.get("requirement-0").waitFor();
    await look("hand in, bad lines", link);
    await bench.leaveTask();
    await bench.get("key-menu").tap();
    await bench.get("key-board-health").tap();
    await look("board check", link);
    await bench.get("key-start-self-check").tap();
    await bench.get("self-check-result").waitFor();
    await look("board check, what is wrong", link);
    await bench.get("key-tool-walk").tap();
    await look("walk along the board", link);
    await bench.get("key-start-walk").tap();
    await bench.get("walk-left").waitFor();
    await bench.get("key-pick-socket-3").tap();
    await look("walk along the board, a station", link);
    await bench.get("key-tool-lead").tap();
    await look("test of a lead", link);
    await bench.get("key-lead-first").tap();
    await look("test of a lead, where", link);
  });

  await withBench({ board: "workshop" }, async (address, link) => {
    await page.clock.install();
    await page.goto(address);
    await link.seen(({ state }) => state === "ready");
    await link.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-07" });
    await link.does("start-attempt", { scenario: "loft-insulation", mode: "practice" });
    await link.does("accept-caution", {});
    await link.does("go-to-step", { step: "plan" });
    await bench.get("cable-table").waitFor();
    await look("plan, a table of two ways to run a cable", link);
    await link.does("leave-attempt", {});
    await bench.get("scenario-sun-room").tap();
    await bench.get("key-assessed").tap();
    await look("caution before assessed work", link);
    await bench.get("key-accept-caution").tap();
    await bench.matchAsFound();
    await bench.makeDead();
    await bench.get("step-plan").tap();
    await bench.enterNumber("99");
    await look("plan, assessed", link);
    await bench.get("step-wire").tap();
    await bench.get("screen-wire").waitFor();
    await look("wire, assessed", link);
    await bench.get("step-hand-in").tap();
    await bench.get("screen-hand-in").waitFor();
    await look("hand in, assessed", link);
    await bench.get("key-hand-in").tap();
    await look("hand in, assessed, asking", link);
    await bench.get("key-yes").tap();
    await bench.get("screen-handed-in").waitFor();
    await look("handed in, assessed", link);
    await link.does("leave-attempt", {});
    await bench.get("screen-scenarios").waitFor();
    await page.clock.fastForward(idleMs);
    await page.clock.pauseAt(Date.now() + 3_600_000);
    await bench.get("dialog-idle").waitFor();
    await page.clock.resume();
    await look("nobody there", link);
  });
};
