import { io } from "socket.io-client";
import { benchNamespace } from "../../shared/protocol/socket-events.ts";
import { seeded } from "../seeded.ts";
import { startBench } from "../e2e/bench-process.ts";
import { fullBoard } from "./judge-speed.ts";
import type { SpeedLine } from "./speed-line.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

const largestBytes = 6000;

/** The largest of what is sent to a bench screen while the workshop board is filled cable by cable. */
export const lines = async (): Promise<SpeedLine[]> => {
  const bench = await startBench({ board: "workshop" });
  const socket = io(`${bench.address}${benchNamespace}`, { transports: ["websocket"] });
  const does = async (name: string, message: object): Promise<void> => {
    const answer = (await socket.emitWithAck(name, message)) as Reply;
    if (!answer.ok) throw new Error(`${name} was refused: ${answer.code}`);
  };
  try {
    await new Promise((done) => socket.once("view", done));
    await does("sign-in", { by: "guest" });
    await does("start-attempt", { scenario: "ring-and-spurs", mode: "practice" });
    await does("accept-caution", {});
    await does("go-to-step", { step: "wire" });
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
    await bench.stop();
  }
};
