import { io } from "socket.io-client";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { seeded } from "../seeded.ts";
import { BenchLink } from "../e2e/bench-link.ts";
import { startBench } from "../e2e/bench-process.ts";
import { fullBoard } from "./judge-speed.ts";
import type { SpeedLine } from "./speed-line.ts";

const largestBytes = 6000;

/** The largest of what is sent to a bench screen while the workshop board is filled cable by cable. */
export const lines = async (): Promise<SpeedLine[]> => {
  const bench = await startBench({ board: "workshop" });
  const link = new BenchLink(bench.address);
  const socket = io(`${bench.address}${benchNamespace}`, { transports: ["websocket"], forceNew: true });
  try {
    await new Promise((done) => socket.once("view", done));
    // Before the board has been read no task can be begun.
    await link.seen(({ state }) => state === "ready");
    await link.does("sign-in", { by: "guest" });
    await link.does("start-attempt", { scenario: "ring-and-spurs", mode: "practice" });
    await link.does("accept-caution", {});
    await link.does("go-to-step", { step: "wire" });
    const sizes: number[] = [];
    socket.on("change", (change: unknown) => sizes.push(Buffer.byteLength(JSON.stringify(change))));
    // Of what the board has at random some pairs of entries have no core in common.
    for (const { from, to } of fullBoard(seeded(1)).cables)
      await socket.emitWithAck("plug-cable", { entryA: from, entryB: to });
    if (sizes.length < 20) throw new Error(`the board was not filled: ${sizes.length} changes`);
    const largest = Math.max(...sizes);
    return [
      {
        what: "a view after a change, before compression: largest",
        reached: `${(largest / 1000).toFixed(1)} kB`,
        target: "at most 6 kB",
        ok: largest <= largestBytes,
      },
    ];
  } finally {
    socket.close();
    link.close();
    await bench.stop();
  }
};
