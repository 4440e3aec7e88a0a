import { fork } from "node:child_process";
import { join } from "node:path";
import { beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { AttemptReader } from "../../../server/store/attempt-reader.ts";
import { LogReader } from "../../../server/store/log-reader.ts";
import { openForReading, openForWriting } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { bundle } from "../bundle.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { expectAsRebuilt } from "./table-of-attempts.ts";

let program = "";

// The writer runs in a process of its own, so that it can be killed in the middle of a write.
beforeAll(async () => {
  const { path, remove } = await bundle("tests/server/store/append-for-ever.ts");
  program = path;
  return remove;
});

/** Lets the writer run until it has said `count` numbers, kills it without a word, and gives the last said. */
async function killedAfter(path: string, count: number): Promise<number> {
  const child = fork(program, [path], { silent: true, execArgv: [] });
  onTestFinished(() => void child.kill("SIGKILL"));
  let text = "";
  child.stdout?.on("data", (chunk: Buffer) => {
    text += chunk.toString("utf8");
    if (text.split("\n").length > count) child.kill("SIGKILL");
  });
  child.once("message", () => child.send("go"));
  await new Promise((resolve) => child.once("close", resolve));
  const whole = text.slice(0, text.lastIndexOf("\n")).split("\n");
  return Number(whole.at(-1));
}

describe("a writer killed in the middle of its work", () => {
  it("has lost at most the event that was being written, and the log is sound", async () => {
    const random = seeded(20_261_126);
    let saidCount = 0;
    for (let turn = 0; turn < 3 * testDepth; turn += 1) {
      const path = join(temporaryFolder(), "spurwise.db");
      const said = await killedAfter(path, 5 + Math.floor(random() * 200));
      saidCount += said + 1;
      openForWriting(path).close();
      const database = openForReading(path);
      const numbers = [...new LogReader(database).rows()]
        .filter(({ type }) => type === "sensed")
        .map(({ bytes }) => (JSON.parse(Buffer.from(bytes).toString("utf8")) as { number: number }).number);
      expect(numbers).toEqual(numbers.map((_, index) => index));
      expect(numbers.length).toBeGreaterThanOrEqual(said + 1);
      expect(verifyLog(database)).toMatchObject({ isSound: true });
      expect(new AttemptReader(database).page({}, 1).attempts[0]).toMatchObject({
        attemptId: `attempt-${Math.floor((numbers.length - 1) / 10)}`,
        eventCount: ((numbers.length - 1) % 10) + 2,
      });
      database.close();
      const writing = openForWriting(path);
      expectAsRebuilt(writing);
      writing.close();
    }
    console.log(`kills: ${3 * testDepth} at random points, ${saidCount} events said to be kept, none lost`);
  });
});
