import Database from "better-sqlite3";
import { copyFileSync, readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { run as verifyCommand } from "../../../server/commands/verify.ts";
import { readEnvironment } from "../../../server/environment.ts";
import { openParts } from "../../../server/parts.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

/** A log with a few attempts, one of them open, all of it in the main file. */
async function soundLog(): Promise<string> {
  const folder = temporaryFolder();
  const bench = await (await new TestBench({ folder }).start()).isWiring();
  for (let turn = 0; turn < 3; turn += 1) {
    for (let change = 0; change < 30; change += 1) {
      bench.port.byHand({ [change % 2 === 0 ? "in" : "out"]: ["socket-1.a.L~way-1.a.L" as never] });
      bench.clock.advance(300);
    }
    await bench.does("hand-in", {});
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    await bench.does("go-to-step", { step: "wire" });
  }
  await bench.stop();
  const path = join(folder, "spurwise.db");
  const database = new Database(path);
  database.pragma("wal_checkpoint(TRUNCATE)");
  database.close();
  return path;
}

/** What becomes of a page; each run takes one for each page, three times the depth all of them. */
const kinds = ["noise", "zeros", "short"] as const;

interface Outcome {
  isBeside: boolean;
  isSaid: boolean;
  practice: string;
}

/** Starts a bench on a data folder as the program does and practises on it; whatever is thrown fails the check. */
async function practiceOn(data: string): Promise<Outcome> {
  const opened = openParts({ ...readEnvironment({}), data, board: "small" }, () => undefined);
  const { records, isLogDamaged } = opened.parts.bench;
  const bench = new TestBench({ parts: { records, isLogDamaged: isLogDamaged === true } });
  try {
    await bench.start();
    opened.parts.logState();
    await bench.refusal("sign-out", {});
    const signedIn = await bench.refusal("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    if (signedIn !== "done") await bench.refusal("sign-in", { by: "guest" });
    const left = await bench.refusal("leave-attempt", {});
    const begun = await bench.refusal("start-attempt", { scenario: "first-spur", mode: "practice" });
    // Work that could not be left for the damage stays open.
    const practice = left === "log-damaged" ? left : begun;
    await bench.refusal("hand-in", {});
    const isSaid = bench.view().banners.some(({ kind }) => kind === "log-damaged");
    expect(bench.view().banners.map(({ kind }) => kind)).not.toContain("disk-full");
    return { isBeside: isLogDamaged === true, isSaid, practice };
  } finally {
    await bench.stop();
    opened.close();
  }
}

describe("a log with a damaged page", () => {
  it("never ends the bench: it starts, says what it found, and practice goes on or is refused for the damage", async () => {
    const sound = readFileSync(await soundLog());
    const pageBytes = sound.readUInt16BE(16) || 65_536;
    const pageCount = sound.length / pageBytes;
    const random = seeded(20_261_126);
    const counts = { starts: 0, beside: 0, said: 0, unnoticed: 0, verifiedBad: 0 };
    for (let turn = 0; turn < testDepth; turn += 1)
      for (let page = 0; page < pageCount; page += 1) {
        const kind = kinds[(page + turn) % kinds.length];
        const data = temporaryFolder();
        const path = join(data, "spurwise.db");
        const copy = Buffer.from(sound);
        const at = page * pageBytes;
        if (kind === "noise")
          for (let byte = 0; byte < pageBytes; byte += 1) copy[at + byte] = Math.floor(random() * 256);
        if (kind === "zeros") copy.fill(0, at, at + pageBytes);
        writeFileSync(path, copy);
        if (kind === "short") truncateSync(path, at + Math.floor(random() * pageBytes));
        const before = readFileSync(path);
        const verified = join(temporaryFolder(), "spurwise.db");
        copyFileSync(path, verified);
        const exit = await verifyCommand([verified]);
        expect(exit === 0 || exit === 1 || exit === 2).toBe(true);

        const outcome = await practiceOn(data);
        counts.starts += 1;
        if (exit !== 0) counts.verifiedBad += 1;
        if (outcome.isBeside) counts.beside += 1;
        if (outcome.isSaid) counts.said += 1;
        else counts.unnoticed += 1;
        if (outcome.isBeside) {
          expect(outcome).toMatchObject({ isSaid: true, practice: "done" });
          expect(readFileSync(path).length).toBeGreaterThanOrEqual(before.length);
        }
        if (outcome.practice !== "done")
          expect(outcome).toMatchObject({ practice: "log-damaged", isSaid: true });
      }
    process.stdout.write(
      `damaged copies: ${counts.starts} starts on ${pageCount} pages, none ended; ${counts.beside} went on beside the ` +
        `damaged log, ${counts.said} said it, ${counts.unnoticed} touched no damaged page; verify found ${counts.verifiedBad}\n`,
    );
    expect(counts.beside).toBeGreaterThan(0);
  });
});
