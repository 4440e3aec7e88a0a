import { execFileSync } from "node:child_process";
import Database from "better-sqlite3";
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { run as verifyCommand } from "../../../server/commands/verify.ts";
import { openRecords } from "../../../server/open-records.ts";
import { holdFolder } from "../../../server/store/hold-folder.ts";
import { LogReader } from "../../../server/store/log-reader.ts";
import { openForReading, openForWriting } from "../../../server/store/open-database.ts";
import { LogWriter } from "../../../server/store/log-writer.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

const boots = (count: number) =>
  Array.from({ length: count }, () => ({
    attemptId: null,
    type: "boot" as const,
    author: byBench,
    content: {},
  }));

/** A data folder as a bench leaves it that was switched off, with so many records. */
function dataFolder(count: number): string {
  const folder = temporaryFolder();
  const opened = openRecords(join(folder, "spurwise.db"), () => undefined);
  opened.records.log.append(boots(count));
  opened.records.log.checkpoint();
  opened.reading.close();
  opened.writing.close();
  return folder;
}

/** What a start on a folder comes to: whether it goes on beside the log, and what it says. */
function startOn(folder: string): { isBeside: boolean; said: string } {
  let said = "";
  const opened = openRecords(join(folder, "spurwise.db"), (sentence) => (said += sentence));
  opened.reading.close();
  opened.writing.close();
  return { isBeside: opened.isBesideDamaged, said };
}

const logOf = (folder: string): string => join(folder, "spurwise.db");

describe("an anchor in a second place of the same machine", () => {
  const elsewhereOf = (folder: string): string => {
    const elsewhere = temporaryFolder();
    const opened = openRecords(logOf(folder), () => undefined, elsewhere);
    opened.records.log.append(boots(3));
    opened.records.log.checkpoint();
    opened.reading.close();
    opened.writing.close();
    return elsewhere;
  };
  function startWith(folder: string, elsewhere: string): { isBeside: boolean; said: string } {
    let said = "";
    const opened = openRecords(logOf(folder), (sentence) => (said += sentence), elsewhere);
    opened.reading.close();
    opened.writing.close();
    return { isBeside: opened.isBesideDamaged, said };
  }
  const verifyWith = async (folder: string, elsewhere: string): Promise<number> => {
    vi.stubEnv("SPURWISE_ANCHOR", elsewhere);
    try {
      return await verifyCommand([folder]);
    } finally {
      vi.unstubAllEnvs();
    }
  };

  it("knows of a whole data folder that is gone, which the one beside the log went with", async () => {
    const folder = dataFolder(7);
    const elsewhere = elsewhereOf(folder);
    expect(startWith(folder, elsewhere)).toEqual({ isBeside: false, said: "" });
    rmSync(folder, { recursive: true });
    mkdirSync(folder);
    expect(await verifyWith(folder, elsewhere)).toBe(1);
    expect(startWith(folder, elsewhere)).toMatchObject({
      isBeside: true,
      said: expect.stringContaining("the log of 10 records is gone") as string,
    });
    expect(existsSync(logOf(folder))).toBe(false);
  });

  it("knows of a folder that was set back whole with its own anchor, or swapped for another bench's", async () => {
    const folder = dataFolder(7);
    const older = temporaryFolder();
    cpSync(folder, older, { recursive: true });
    const elsewhere = elsewhereOf(folder);
    for (const from of [older, dataFolder(20)]) {
      rmSync(folder, { recursive: true });
      cpSync(from, folder, { recursive: true });
      expect(await verifyWith(folder, elsewhere)).toBe(1);
      expect(startWith(folder, elsewhere).isBeside).toBe(true);
    }
  });

  it("that cannot be written, as on a stick that is not in, keeps nobody from working", () => {
    expect(startWith(dataFolder(7), "/nowhere/at/all")).toEqual({ isBeside: false, said: "" });
  });

  it("is another log's where several benches keep theirs in one folder", () => {
    const elsewhere = temporaryFolder();
    for (const folder of [dataFolder(7), dataFolder(9)])
      expect(startWith(folder, elsewhere).isBeside).toBe(false);
    expect(readdirSync(elsewhere)).toHaveLength(2);
  });
});

describe("an anchor that is kept on another machine", () => {
  it("shows a folder that was set back whole, which its own anchor cannot, and is named where it is none", async () => {
    const folder = dataFolder(7);
    const older = temporaryFolder();
    for (const name of ["spurwise.db", "spurwise.db.anchor.json"])
      copyFileSync(join(folder, name), join(older, name));
    const opened = openRecords(logOf(folder), () => undefined);
    opened.records.log.append(boots(2));
    const kept = join(temporaryFolder(), "anchor.json");
    writeFileSync(kept, JSON.stringify(opened.records.log.anchor));
    opened.reading.close();
    opened.writing.close();
    expect(await verifyCommand([folder, "--anchor", kept])).toBe(0);
    expect(await verifyCommand([older])).toBe(0);
    expect(await verifyCommand([older, "--anchor", kept])).toBe(1);
    expect(await verifyCommand(["--anchor", kept, dataFolder(9)])).toBe(1);
    expect(await verifyCommand([folder, "--anchor", join(folder, "secrets.json")])).toBe(2);
    expect(await verifyCommand([folder, "--anchor"])).toBe(2);
  });
});

describe("a log that is not what it was", () => {
  it("is held to how far it had come: one that goes on is sound", async () => {
    const folder = dataFolder(7);
    expect(startOn(folder)).toEqual({ isBeside: false, said: "" });
    expect(await verifyCommand([folder])).toBe(0);
  });

  it("is missed where it has vanished, and no empty one is made in its place", async () => {
    const folder = dataFolder(7);
    rmSync(logOf(folder));
    expect(await verifyCommand([folder])).toBe(1);
    expect(startOn(folder)).toMatchObject({
      isBeside: true,
      said: expect.stringContaining("7 records is gone") as string,
    });
    expect(existsSync(logOf(folder))).toBe(false);
    writeFileSync(logOf(folder), "");
    expect(startOn(folder).isBeside).toBe(true);
  });

  it("is known where it was shortened, by the program's own rules or by an older copy put back", async () => {
    const folder = dataFolder(7);
    const older = readFileSync(logOf(folder));
    const opened = openRecords(logOf(folder), () => undefined);
    opened.records.log.append(boots(3));
    opened.records.log.checkpoint();
    opened.reading.close();
    opened.writing.close();
    writeFileSync(logOf(folder), older);
    expect(await verifyCommand([folder])).toBe(1);
    expect(startOn(folder)).toMatchObject({
      isBeside: true,
      said: expect.stringContaining("had 10 records and has 7") as string,
    });
    expect(readFileSync(logOf(folder)).equals(older)).toBe(true);
  });

  it("is known where it was swapped for the sound log of another bench, or for a longer one", async () => {
    const folder = dataFolder(7);
    copyFileSync(logOf(dataFolder(20)), logOf(folder));
    expect(await verifyCommand([folder])).toBe(1);
    expect(startOn(folder)).toMatchObject({
      isBeside: true,
      said: expect.stringContaining("not the log of bench") as string,
    });
  });

  it("lies in the main file after a start and after a hand-in, so that a copy of that file alone has it", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.does("hand-in", {});
    const copy = join(temporaryFolder(), "spurwise.db");
    copyFileSync(logOf(bench.folder), copy);
    const database = openForReading(copy);
    expect([...new LogReader(database).rows()].map(({ type }) => type)).toContain("handed-in");
    database.close();
  });

  it("is no longer append-only where a trigger was taken away or changed, and verify says which", async () => {
    for (const sql of [
      "DROP TRIGGER log_is_not_changed",
      "DROP TRIGGER document_is_not_removed; CREATE TRIGGER document_is_not_removed BEFORE DELETE ON document BEGIN SELECT 1; END",
      "CREATE TRIGGER another AFTER INSERT ON log BEGIN SELECT 1; END",
    ]) {
      const folder = dataFolder(7);
      const database = new Database(logOf(folder));
      database.exec(sql);
      database.close();
      expect(await verifyCommand([folder])).toBe(1);
    }
  });

  it("is verified where no file can be made beside it", async () => {
    const folder = dataFolder(7);
    const medium = temporaryFolder();
    execFileSync("mount", ["-t", "tmpfs", "tmpfs", medium]);
    onTestFinished(() => void execFileSync("umount", [medium]));
    copyFileSync(logOf(folder), logOf(medium));
    execFileSync("mount", ["-o", "remount,ro", medium]);
    expect(() => openForReading(logOf(medium))).toThrow(
      expect.objectContaining({ code: "read-only" }) as Error,
    );
    expect(await verifyCommand([medium])).toBe(0);
    execFileSync("mount", ["-o", "remount,rw", medium]);
  });
});

describe("a data folder that is taken away while the bench works", () => {
  it("is noticed before the next answer: nothing is said to be kept that is not", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    renameSync(bench.folder, `${bench.folder}-away`);
    try {
      expect(await bench.refusal("go-to-step", { step: "plan" })).toBe("log-damaged");
      expect(bench.view().banners.map(({ kind }) => kind)).toContain("log-damaged");
      mkdirSync(bench.folder);
      copyFileSync(`${bench.folder}-away/spurwise.db`, logOf(bench.folder));
      expect(await bench.refusal("go-to-step", { step: "plan" })).toBe("log-damaged");
      rmSync(bench.folder, { recursive: true });
    } finally {
      renameSync(`${bench.folder}-away`, bench.folder);
    }
    expect(await bench.refusal("go-to-step", { step: "plan" })).toBe("done");
  });
});

describe("what stands in the way of a start", () => {
  it("is told apart: in use by another, a lock file that is none, a lock file that cannot be opened", () => {
    const folder = temporaryFolder();
    const letGo = holdFolder(folder);
    expect(() => holdFolder(folder)).toThrow(expect.objectContaining({ code: "in-use" }) as Error);
    letGo();
    writeFileSync(join(folder, "in-use.lock"), Buffer.alloc(4096, 7));
    expect(() => holdFolder(folder)).toThrow(expect.objectContaining({ code: "lock-broken" }) as Error);
    rmSync(join(folder, "in-use.lock"));
    mkdirSync(join(folder, "in-use.lock"));
    expect(() => holdFolder(folder)).toThrow(expect.objectContaining({ code: "read-only" }) as Error);
  });

  it("is not a full disk where the log may only be read", () => {
    const path = join(temporaryFolder(), "spurwise.db");
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, new ManualClock());
    database.pragma("query_only = ON");
    expect(() => writer.append(boots(1))).toThrow(expect.objectContaining({ code: "read-only" }) as Error);
    database.close();
  });
});
