import { io, type Socket } from "socket.io-client";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it, onTestFinished } from "vitest";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { testDepth } from "../depth.ts";
import { type BenchProcess, startBench } from "../e2e/bench-process.ts";
import { mostResidentMb, residentMb } from "./memory-of.ts";
import { RawLink } from "./raw-link.ts";

/** What the service may hold before the system slows it down (`MemoryHigh` of hardware/pi-setup), and server and scanner of it. */
const serviceMb = 300;

async function bench(): Promise<BenchProcess> {
  const started = await startBench({ board: "workshop" });
  onTestFinished(() => started.stop());
  return started;
}

/** A screen that reads, as the bench's own does. */
async function screenOf({ address }: BenchProcess): Promise<Socket> {
  const socket = io(`${address}${benchNamespace}`, { transports: ["websocket"], forceNew: true });
  onTestFinished(() => void socket.disconnect());
  await new Promise((resolve) => socket.once("view", resolve));
  return socket;
}

const asks = (socket: Socket, name: string, message: unknown): Promise<{ ok: boolean; code?: string }> =>
  socket.timeout(5000).emitWithAck(name, message) as Promise<{ ok: boolean; code?: string }>;

/** What is tried again: a bench that has just started has not heard its board nor read its scenarios yet. */
const waitedFor = new Set(["too-fast", "no-board", "no-such-scenario"]);

/** Does an act on the first screen through which it is let. */
async function doesAny(screens: readonly Socket[], name: string, message: unknown): Promise<void> {
  for (;;) {
    for (const socket of screens) {
      const answer = await asks(socket, name, message);
      if (answer.ok) return;
      if (!waitedFor.has(answer.code ?? "")) throw new Error(`${name}: ${answer.code}`);
    }
    await pause(50);
  }
}

const figures = ({ pid, scannerPid }: BenchProcess, restMb: number): { mostMb: number; said: string } => {
  const [serverMb, scannerMb] = [mostResidentMb(pid), mostResidentMb(scannerPid() ?? 0)];
  const said = `server ${restMb.toFixed(0)} MB before and at most ${serverMb.toFixed(0)} MB, scanner ${scannerMb.toFixed(0)} MB`;
  return { mostMb: serverMb + scannerMb, said };
};

describe("a bench at work", () => {
  it("stays within 90 MB for the server and 50 MB for the scanner", async () => {
    const process = await bench();
    const screens = [await screenOf(process), await screenOf(process)];
    const does = (name: string, message: unknown) => doesAny(screens, name, message);
    const restMb = residentMb(process.pid);
    await does("sign-in", { by: "guest" });
    for (let attempt = 0; attempt < 3 * testDepth; attempt += 1) {
      await does("start-attempt", { scenario: "ring-and-spurs", mode: "practice" });
      await does("accept-caution", {});
      await does("go-to-step", { step: "wire" });
      for (let count = 0; count < 20; count += 1) {
        await does("plug-cable", { entryA: "way-1.a", entryB: "socket-1.a" });
        await does("pull", { what: "all" });
      }
      await does("leave-attempt", {});
    }
    console.log(`at work: ${figures(process, restMb).said}`);
    expect(mostResidentMb(process.pid)).toBeLessThan(90);
    expect(mostResidentMb(process.scannerPid() ?? 0)).toBeLessThan(50);
  });
});

describe("a bench under a flood", () => {
  it("gives links that never read no memory: each is dropped, and whoever reads goes on", async () => {
    const process = await bench();
    const screens = [await screenOf(process), await screenOf(process)];
    const does = (name: string, message: unknown) => doesAny(screens, name, message);
    await does("sign-in", { by: "guest" });
    const restMb = residentMb(process.pid);
    let links: RawLink[] = [];
    let droppedCount = 0;
    const changeCount = 150 * testDepth;
    for (let count = 0; count < changeCount; count += 2) {
      droppedCount += links.filter(({ isEnded }) => isEnded).length;
      links = links.filter(({ isEnded }) => !isEnded);
      while (links.length < 10) {
        const link = await RawLink.open(process.address);
        if (!link) break;
        link.send(`40${benchNamespace},`);
        links.push(link);
      }
      // They say that they are alive: nothing but what waits for them gives them away.
      for (const link of links) link.send("3");
      await does("start-attempt", { scenario: "sun-room", mode: "practice" });
      await does("leave-attempt", {});
    }
    const { mostMb, said } = figures(process, restMb);
    console.log(
      `flood: ${changeCount} changes for 10 links that never read, ${droppedCount} of them dropped: ${said}`,
    );
    for (const link of links) link.end();
    expect(mostMb).toBeLessThan(serviceMb);
    // Until some megabytes wait the system itself holds them.
    if (testDepth >= 10) expect(droppedCount).toBeGreaterThan(0);
    await does("set-large", { isLarge: true });
  });

  it("of messages drops whoever sends without end, and whoever stands at the bench goes on", async () => {
    const process = await bench();
    const screen = await screenOf(process);
    const restMb = residentMb(process.pid);
    let sentCount = 0;
    let droppedCount = 0;
    const long = `42${benchNamespace},1["sign-in",${JSON.stringify({ by: "x".repeat(60_000) })}]`;
    for (let turn = 0; turn < 3 * testDepth; turn += 1) {
      const links = await Promise.all(Array.from({ length: 10 }, () => RawLink.open(process.address)));
      const open = links.filter((link) => link !== undefined);
      for (const link of open) link.send(`40${benchNamespace},`);
      for (const link of open) for (let count = 0; count < 400; count += 1) link.send(long);
      sentCount += 400 * open.length;
      while (open.some(({ isEnded }) => !isEnded)) {
        // Who has been dropped notices when they write.
        for (const link of open) link.send(long);
        await pause(20);
      }
      droppedCount += open.length;
    }
    const { mostMb, said } = figures(process, restMb);
    console.log(`flood: ${sentCount} messages of 60 kB over ${droppedCount} links, all dropped: ${said}`);
    expect(mostMb).toBeLessThan(serviceMb);
    await doesAny([screen], "set-large", { isLarge: true });
  });
});
