import { beforeAll, describe, expect, it } from "vitest";
import { scannerProcess } from "../../server/board/scanner-process.ts";
import { systemTimers } from "../../server/clock/system-clock.ts";
import { readBoardFile } from "../../server/library.ts";
import { ScannerClient } from "../../server/scanner-client.ts";
import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { processesOf } from "./board/processes-of.ts";
import { bundle } from "./bundle.ts";
import { rightCables } from "./test-bench.ts";
import { Screen, testServer } from "./test-server.ts";

let childPath = "";

beforeAll(async () => {
  const { path, remove } = await bundle("hardware/scan/scanner-child.ts");
  childPath = path;
  return remove;
});

/** A server whose board is sensed line by line in the scanner's own process, and a screen that works there. */
async function benchWithScanner(): Promise<Screen> {
  const { board, bytes } = readBoardFile("hardware/boards/small.json");
  const port = new ScannerClient({
    start: scannerProcess(childPath),
    lines: "simulated",
    timers: systemTimers,
    note: () => undefined,
  });
  const { url } = await testServer({
    parts: { board, boardBytes: bytes, port, timers: systemTimers },
  });
  const screen = new Screen(url);
  await screen.sees(({ state }) => state === "ready");
  await screen.does("sign-in", { by: "guest" });
  await screen.does("start-attempt", { scenario: "first-spur", mode: "practice" });
  await screen.does("accept-caution");
  await screen.does("go-to-step", { step: "wire" });
  return screen;
}

const wholeCableCount = (view: BenchView): number =>
  view.attempt?.cables.filter(({ conductors }) => conductors.length === 3).length ?? 0;

describe("a board that is sensed line by line", () => {
  it("shows every cable, judges the ring with its spur as right, and names the core that is opened", async () => {
    const screen = await benchWithScanner();
    for (const [entryA, entryB] of rightCables)
      await screen.does("plug-cable", { entryA, entryB, csaMm2: 2.5 });
    await screen.does("ask-verdict");
    const right = await screen.sees(({ attempt }) => attempt?.verdict?.isHeld === false);
    expect(wholeCableCount(right)).toBe(4);
    expect(right.attempt?.verdict).toMatchObject({ proposal: "met", findings: [] });

    await screen.does("pull", { what: "lead", contactA: "socket-1.b.N", contactB: "socket-2.a.N" });
    await screen.sees((view) => wholeCableCount(view) === 3);
    await screen.does("ask-verdict");
    const open = await screen.sees(
      ({ attempt }) => attempt?.verdict?.isCurrent === true && attempt.verdict.findings.length > 0,
    );
    expect(open.attempt?.verdict?.findings[0]?.id).toMatch(/^ring-open/);
  });

  it("goes on with every lead as it was when the scanner's process is killed, and says so meanwhile", async () => {
    const screen = await benchWithScanner();
    for (const [entryA, entryB] of rightCables)
      await screen.does("plug-cable", { entryA, entryB, csaMm2: 2.5 });
    await screen.sees((view) => wholeCableCount(view) === 4);
    const [pid] = processesOf(childPath);
    process.kill(pid ?? 0, "SIGKILL");
    const lost = await screen.sees(({ state }) => state === "no-board");
    expect(lost.banners.map(({ kind }) => kind)).toContain("board-lost");
    // What was sensed last stays on the screen: a lost board is not an empty one.
    expect(wholeCableCount(lost)).toBe(4);
    const back = await screen.sees(({ state }) => state === "ready");
    expect(wholeCableCount(back)).toBe(4);
    await screen.does("pull", { what: "all" });
    await screen.sees(({ attempt }) => attempt?.cables.length === 0);
  });
});
