import type { AttemptEvent } from "../../../server/attempt/attempt-events.ts";
import { systemClock } from "../../../server/clock/system-clock.ts";
import { LogWriter } from "../../../server/store/log-writer.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import { openForWriting } from "../../../server/store/open-database.ts";

/**
 * Appends events one after another and says each number once it is said to be durable, until it is killed. Every
 * tenth starts an attempt.
 */
const path = process.argv[2] ?? "";
const database = openForWriting(path);
const writer = new LogWriter(database, path, systemClock());
const started: AttemptEvent = {
  type: "attempt-started",
  content: {
    scenario: "first-spur",
    scenarioRevision: 1,
    scenarioHash: writer.keepDocument("scenario", Buffer.from("{}")),
    board: "small",
    boardHash: writer.keepDocument("board", Buffer.from("[]")),
    rulePackVersion: "1",
    softwareVersion: "0.1.0",
    learner: null,
    kind: "first",
    mode: "practice",
    isExistingCircuit: false,
  },
};
/** The control of a disk that drops what was not synced: as SQLite writes where nobody asks it to sync each commit. */
const isNormal = process.argv[3] === "normal";
process.on("message", () => {
  for (let number = 0; ; number += 1) {
    const attemptId = `attempt-${Math.floor(number / 10)}`;
    const content = { number, added: ["x".repeat(300)], removed: [] };
    writer.append([
      ...(number % 10 === 0 ? [{ attemptId, author: byBench, ...started }] : []),
      { attemptId, type: "sensed", author: byBench, content },
    ]);
    // After the first append, which proves that it is not so.
    if (isNormal && number === 0) database.pragma("synchronous = NORMAL");
    process.stdout.write(`${number}\n`);
  }
});
process.send?.("ready");
