import { execFileSync, fork } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { LogReader } from "../../server/store/log-reader.ts";
import { openRecords } from "../../server/open-records.ts";
import { verifyLog } from "../../server/store/verify-log.ts";
import { testDepth } from "../depth.ts";
import { seeded } from "../seeded.ts";
import { bundle } from "../server/bundle.ts";

let program = "";
let disk = "";

beforeAll(async () => {
  const bundled = await bundle("tests/server/store/append-for-ever.ts");
  program = bundled.path;
  const folder = mkdtempSync(join(tmpdir(), "spurwise-disk-"));
  disk = join(folder, "dropping-disk.so");
  const source = join(import.meta.dirname, "dropping-disk.c");
  execFileSync("gcc", ["-shared", "-fPIC", "-O2", "-Wall", "-Wextra", "-Werror", "-o", disk, source, "-ldl"]);
  return () => {
    bundled.remove();
    rmSync(folder, { recursive: true, force: true });
  };
});

interface Cut {
  saidCount: number;
  lostCount: number;
  fault: string | undefined;
}

/** Lets a writer run on a disk that drops what was not synced, takes the power away, and reads what is left. */
async function cutAfter(lineCount: number, how: "as-it-is" | "normal"): Promise<Cut> {
  const [at, kept] = [0, 1].map(() => mkdtempSync(join(tmpdir(), "spurwise-cut-"))) as [string, string];
  onTestFinished(() => [at, kept].forEach((folder) => rmSync(folder, { recursive: true, force: true })));
  const child = fork(program, [join(at, "spurwise.db"), how], {
    silent: true,
    execArgv: [],
    env: { ...process.env, LD_PRELOAD: disk, DISK_AT: at, DISK_KEPT: kept },
  });
  let text = "";
  child.stdout?.on("data", (chunk: Buffer) => {
    text += chunk.toString("utf8");
    if (text.split("\n").length > lineCount) child.kill("SIGKILL");
  });
  child.once("message", () => child.send("go"));
  await new Promise((resolve) => child.once("close", resolve));
  const saidCount = text.split("\n").length - 1;
  const opened = openRecords(join(kept, "spurwise.db"), () => undefined);
  const numbers = [...new LogReader(opened.reading).rows()].filter(({ type }) => type === "sensed").length;
  const proof = verifyLog(opened.reading);
  opened.reading.close();
  opened.writing.close();
  const fault = opened.isBesideDamaged ? "damaged" : proof.isSound ? undefined : proof.reason;
  return { saidCount, lostCount: Math.max(0, saidCount - numbers), fault };
}

async function cuts(count: number, how: "as-it-is" | "normal"): Promise<Cut[]> {
  const random = seeded(20_261_127);
  const made: Cut[] = [];
  for (let turn = 0; turn < count; turn += 1) made.push(await cutAfter(1 + Math.floor(random() * 120), how));
  return made;
}

const sum = (all: readonly Cut[], of: (cut: Cut) => number): number =>
  all.reduce((total, cut) => total + of(cut), 0);

describe("the power cut on a disk that drops what was not synced", () => {
  it("loses no event that was said to be kept, and the log is sound; written as SQLite would by itself it loses some", async () => {
    const own = await cuts(6 * testDepth, "as-it-is");
    const control = await cuts(2 * testDepth, "normal");
    console.log(
      `power cuts: ${own.length}, ${sum(own, ({ saidCount }) => saidCount)} events said to be kept, ` +
        `${sum(own, ({ lostCount }) => lostCount)} lost; control with synchronous NORMAL: ${control.length} cuts, ` +
        `${sum(control, ({ lostCount }) => lostCount)} of ${sum(control, ({ saidCount }) => saidCount)} lost`,
    );
    expect(own.filter(({ lostCount, fault }) => lostCount > 0 || fault !== undefined)).toEqual([]);
    expect(sum(own, ({ saidCount }) => saidCount)).toBeGreaterThan(own.length);
    expect(sum(control, ({ lostCount }) => lostCount)).toBeGreaterThan(0);
  });
});
