import { LogWriter } from "../../../server/store/log-writer.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import { openForWriting } from "../../../server/store/open-database.ts";
import { systemClock } from "../../../server/clock/system-clock.ts";

/** Appends events one after another and says each number once it is said to be durable, until it is killed. */
const path = process.argv[2] ?? "";
const database = openForWriting(path);
const writer = new LogWriter(database, path, systemClock());
process.on("message", () => {
  for (let number = 0; ; number += 1) {
    writer.append([
      {
        attemptId: "attempt-1",
        type: "sensed",
        author: byBench,
        content: { number, added: ["x".repeat(300)] },
      },
    ]);
    process.stdout.write(`${number}\n`);
  }
});
process.send?.("ready");
