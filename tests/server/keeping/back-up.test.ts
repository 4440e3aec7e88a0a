import Database from "better-sqlite3";
import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { backUp, type BackUpStep, backUpsIn, keepNewest } from "../../../server/keeping/back-up.ts";
import { dueLearners } from "../../../server/keeping/due.ts";
import { restore } from "../../../server/keeping/restore.ts";
import { openRecords, type OpenedRecords } from "../../../server/open-records.ts";
import { readAnchor } from "../../../server/store/log-anchor.ts";
import { openForReading, openForWriting } from "../../../server/store/open-database.ts";
import { StoreError } from "../../../server/store/store-error.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

const logOf = (folder: string): string => join(folder, "spurwise.db");
const byBench = { by: "bench", session: null } as const;

const backUpOf = (folder: string, to = temporaryFolder(), wallMs = 1_700_000_000_000) =>
  backUp({ path: logOf(folder), to, softwareVersion: "0.0.0-test", wallMs });

const bringBack = (from: string, folder: string, isDryRun = false) =>
  restore({ from, path: logOf(folder), clock: new ManualClock(), isDryRun, say: () => undefined });

/** A bench with people of its own and a piece of work that is handed in, still running. */
async function bench(folder = temporaryFolder()): Promise<{ bench: TestBench; kasia: string }> {
  const made = await new TestBench({ folder, hasDemo: false }).start();
  const { people } = made.parts;
  await people.list.add({ name: "Ida Nowak", role: "technician", pin: "482915" }, byBench);
  await people.list.add(
    { name: "Kasia Wrona", role: "learner", badge: "L-11", centreNumber: "T-011" },
    byBench,
  );
  await made.does("sign-in", { by: "badge", badge: "L-11" });
  await made.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
  await made.does("accept-caution", {});
  await made.does("go-to-step", { step: "wire" });
  await made.does("hand-in", {});
  const kasia = people.all().find(({ name }) => name === "Kasia Wrona")?.id ?? "";
  return { bench: made, kasia };
}

const rowsOf = (path: string): unknown[] => {
  const database = openForReading(path);
  const rows = database.prepare("SELECT hex(hash) FROM log ORDER BY bench_id, boot, sequence").all();
  database.close();
  return rows;
};

function opened(folder: string, look: (records: OpenedRecords) => void): void {
  const records = openRecords(logOf(folder), () => undefined);
  try {
    look(records);
  } finally {
    records.reading.close();
    records.writing.close();
  }
}

describe("a back-up", () => {
  it("made while the bench is at work holds every record, and brings back all of it on another machine", async () => {
    const { bench: one, kasia } = await bench();
    await one.does("leave-attempt", {});
    const to = temporaryFolder();
    const { file, manifest } = await backUpOf(one.folder, to);
    expect(backUpsIn(to)).toEqual([file.slice(to.length + 1)]);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const before = rowsOf(logOf(one.folder));
    expect(manifest).toMatchObject({ rowCount: before.length, benchId: one.parts.records?.log.benchId });
    await one.stop();

    const other = temporaryFolder();
    expect(bringBack(file, other)).toMatchObject({ erasedCount: 0, replaced: undefined });
    expect(rowsOf(logOf(other)).slice(0, before.length)).toEqual(before);
    const again = await new TestBench({ folder: other, hasDemo: false }).start();
    await again.does("sign-in", { by: "badge", badge: "L-11" });
    expect(again.view().person?.name).toBe("Kasia Wrona");
    expect(again.parts.records?.attempts.page({}, 5).attempts).toMatchObject([
      { learner: kasia, status: "handed-in" },
    ]);
    expect(again.events("restored")).toMatchObject([{ content: { rowCount: before.length } }]);
    await again.does("sign-in", {
      by: "pin",
      person: again.parts.people.unlockers()[0]?.id ?? "",
      pin: "482915",
    });
    expect(verifyLog(again.writing)).toMatchObject({ isSound: true });
    expect(readdirSync(other)).not.toContain("restoring");
  });

  it("in the place of a later log keeps that one, and the bench goes on from the back-up without a complaint", async () => {
    const { bench: one } = await bench();
    const { file } = await backUpOf(one.folder);
    await one.does("leave-attempt", {});
    await one.stop();
    opened(one.folder, ({ records }) => records.log.checkpoint());
    const later = rowsOf(logOf(one.folder));
    const { replaced } = bringBack(file, one.folder);
    expect(rowsOf(logOf(replaced ?? ""))).toEqual(later);
    opened(one.folder, ({ isBesideDamaged, writing }) => {
      expect(isBesideDamaged).toBe(false);
      expect(verifyLog(writing)).toMatchObject({ isSound: true });
    });
    expect(readAnchor(logOf(one.folder))?.rowCount).toBeLessThan(later.length + 2);
  });

  it("is brought back by its own anchor, also where another is kept elsewhere", async () => {
    const { bench: one } = await bench();
    const { file } = await backUpOf(one.folder);
    await one.does("leave-attempt", {});
    await one.stop();
    const elsewhere = temporaryFolder();
    const start = (): boolean => {
      const records = openRecords(logOf(one.folder), () => undefined, elsewhere);
      records.records.log.checkpoint();
      records.reading.close();
      records.writing.close();
      return records.isBesideDamaged;
    };
    expect(start()).toBe(false);
    restore({
      from: file,
      path: logOf(one.folder),
      clock: new ManualClock(),
      isDryRun: false,
      anchorTo: elsewhere,
      say: () => undefined,
    });
    expect(start()).toBe(false);
  });

  it("does not bring back who was erased since, from the bench's own list, from that beside it, or where the log is gone", async () => {
    const { bench: one, kasia } = await bench();
    const to = temporaryFolder();
    const { file } = await backUpOf(one.folder, to);
    await one.does("leave-attempt", {});
    expect(one.parts.people.list.erase(kasia, byBench)).toBeUndefined();
    await backUpOf(one.folder, to, 1_700_000_100_000);
    await one.stop();
    const erasedIn = (folder: string): void => {
      expect(bringBack(file, folder)).toMatchObject({ erasedCount: 1 });
      opened(folder, ({ people, writing }) => {
        expect(people?.reader.all().map(({ name }) => name)).toEqual(["Ida Nowak"]);
        expect(people?.keys.of(kasia)).toBeUndefined();
        expect(verifyLog(writing)).toMatchObject({ isSound: true });
      });
      expect(readFileSync(join(folder, "person-keys.json"), "utf8")).not.toContain(kasia);
    };
    // On a machine that knows nothing: the list lies beside the back-ups.
    erasedIn(temporaryFolder());
    rmSync(join(to, "erased.json"));
    erasedIn(one.folder);
    // The log is gone; the list of the folder is not.
    const bare = temporaryFolder();
    copyFileSync(join(one.folder, "erased.json"), join(bare, "erased.json"));
    erasedIn(bare);
  });

  it("can be tried: nothing is changed then", async () => {
    const { bench: one } = await bench();
    const { file } = await backUpOf(one.folder);
    await one.stop();
    const before = readdirSync(one.folder).map((name) => [
      name,
      readFileSync(join(one.folder, name)).toString("hex"),
    ]);
    expect(bringBack(file, one.folder, true)).toMatchObject({ replaced: undefined });
    const shared = (name: string): boolean => !/-(wal|shm)$/.test(name);
    const now = readdirSync(one.folder).map((name) => [
      name,
      readFileSync(join(one.folder, name)).toString("hex"),
    ]);
    expect(now.filter(([name]) => shared(name ?? ""))).toEqual(before.filter(([name]) => shared(name ?? "")));
  });

  it("of an older version is brought up to date, and one of a later version is refused", async () => {
    const folder = temporaryFolder();
    const path = logOf(folder);
    writeFileSync(path, gunzipSync(readFileSync("tests/server/store/landed/version-2.db.gz")));
    const columnsOf = (database: Database.Database) =>
      (database.pragma("table_info(attempt)") as { name: string }[]).map(({ name }) => name);
    const then = new Database(path);
    const columnsOfThen = columnsOf(then);
    then.close();
    openForWriting(path).close();
    const { file } = await backUpOf(folder);
    const old = new Database(file);
    old.exec("DROP TABLE person; DROP INDEX attempt_listed; DROP INDEX log_apart; DROP INDEX log_shown");
    for (const column of columnsOf(old).filter((name) => !columnsOfThen.includes(name)))
      old.exec(`ALTER TABLE attempt DROP COLUMN ${column}`);
    old.pragma("user_version = 2");
    old.close();
    const target = temporaryFolder();
    expect(bringBack(file, target)).toMatchObject({ erasedCount: 0 });
    const later = new Database(file);
    later.pragma("user_version = 99");
    later.close();
    const fresh = temporaryFolder();
    expect(() => bringBack(file, fresh)).toThrow(
      expect.objectContaining({ code: "newer-than-program" }) as Error,
    );
    expect(readdirSync(fresh)).toEqual([]);
  });

  it.each([
    {
      what: "a record in it was changed",
      spoil: "DROP TRIGGER log_is_not_changed; UPDATE log SET wall_ms = 1 WHERE sequence = 2",
    },
    { what: "a person in it was changed", spoil: "UPDATE person SET role = 'technician'" },
    {
      what: "its manifest is of another",
      spoil: "UPDATE back_up SET bytes = x'7b7d' WHERE name = 'manifest.json'",
    },
    {
      what: "a file in it was changed",
      spoil: "UPDATE back_up SET bytes = x'7b7d' WHERE name = 'person-keys.json'",
    },
    {
      what: "a file in it goes up a folder",
      spoil: "INSERT INTO back_up VALUES ('../../evil.json', '', x'00')",
    },
    {
      what: "a file in it is a path",
      spoil: "UPDATE back_up SET name = '/tmp/evil.json' WHERE name = 'secrets.json'",
    },
    { what: "it is no back-up", spoil: "DROP TABLE back_up" },
  ])("is refused where $what, and nothing is changed", async ({ spoil }) => {
    const { bench: one } = await bench();
    const { file } = await backUpOf(one.folder);
    await one.stop();
    const database = new Database(file);
    database.exec(spoil);
    database.close();
    const target = temporaryFolder();
    expect(() => bringBack(file, target)).toThrow(expect.objectContaining({ code: "damaged" }) as Error);
    expect(readdirSync(target)).toEqual([]);
    expect(existsSync("/tmp/evil.json")).toBe(false);
  });

  describe("sealed with a passphrase", () => {
    const passphrase = "copper kettle under the stairs";
    const sealedOf = (folder: string, to = temporaryFolder()) =>
      backUp({
        path: logOf(folder),
        to,
        softwareVersion: "0.0.0-test",
        wallMs: 1_700_000_000_000,
        passphrase,
      });
    const open = (from: string, folder: string, given: string | undefined) =>
      restore({
        from,
        path: logOf(folder),
        clock: new ManualClock(),
        isDryRun: false,
        passphrase: given,
        say: () => undefined,
      });

    it("shows nothing of what is in it, and comes back whole with it alone", async () => {
      const { bench: one } = await bench();
      await one.does("leave-attempt", {});
      const to = temporaryFolder();
      const { file } = await sealedOf(one.folder, to);
      const before = rowsOf(logOf(one.folder));
      await one.stop();
      expect(backUpsIn(to)).toHaveLength(1);
      const bytes = readFileSync(file).toString("latin1");
      for (const word of ["SQLite format", "person-keys", "attempt-started", "first-spur"])
        expect(bytes).not.toContain(word);
      for (const folder of [to, one.folder])
        expect(readdirSync(folder).filter((name) => name.includes("unfinished"))).toEqual([]);
      const other = temporaryFolder();
      for (const wrong of [undefined, "copper kettle under the stair"])
        expect(() => open(file, other, wrong)).toThrow(
          expect.objectContaining({ code: "wrong-passphrase" }) as Error,
        );
      expect(readdirSync(other)).toEqual([]);
      expect(open(file, other, passphrase)).toMatchObject({ replaced: undefined });
      expect(rowsOf(logOf(other)).slice(0, before.length)).toEqual(before);
    });

    it("is refused where one byte of it was changed or the end is missing, and nothing is changed", async () => {
      const { bench: one } = await bench();
      const { file } = await sealedOf(one.folder);
      await one.stop();
      const sound = readFileSync(file);
      const target = temporaryFolder();
      for (const at of [0, 30, 45, 55, 70, Math.floor(sound.length / 2), sound.length - 1]) {
        const changed = Buffer.from(sound);
        changed[at] = (changed[at] ?? 0) ^ 1;
        writeFileSync(file, changed);
        expect(() => open(file, target, passphrase)).toThrow(StoreError);
      }
      for (const length of [10, 60, sound.length - 1]) {
        writeFileSync(file, sound.subarray(0, length));
        expect(() => open(file, target, passphrase)).toThrow(StoreError);
      }
      expect(readdirSync(target)).toEqual([]);
      writeFileSync(file, sound);
      expect(open(file, target, passphrase).manifest.rowCount).toBeGreaterThan(0);
    });
  });

  it("says how far it has come: copied, proved record by record, sealed", async () => {
    const { bench: one } = await bench();
    const { records } = one.parts;
    const many = Array.from({ length: 2500 }, (_, number) => ({
      attemptId: null,
      type: "boot" as const,
      author: byBench,
      content: { number },
    }));
    records?.log.append(many);
    const steps: BackUpStep[] = [];
    await backUp({
      path: logOf(one.folder),
      to: temporaryFolder(),
      softwareVersion: "0.0.0-test",
      wallMs: 1_700_000_000_000,
      passphrase: "copper kettle under the stairs",
      say: (step) => steps.push(step),
    });
    expect(steps.map(({ step, doneCount }) => `${step} ${Math.floor(doneCount / 1000)}`)).toEqual([
      "copying 0",
      "proving 1",
      "proving 2",
      "sealing 2",
    ]);
  });

  it("is not made of records that are not sound: the good ones of before stay", async () => {
    const { bench: one } = await bench();
    const to = temporaryFolder();
    await backUpOf(one.folder, to);
    one.writing.exec("UPDATE person SET role = 'technician'");
    await expect(backUpOf(one.folder, to, 1_700_000_100_000)).rejects.toMatchObject({ code: "damaged" });
    expect(backUpsIn(to)).toHaveLength(1);
    expect(readdirSync(to).filter((name) => name.includes("unfinished"))).toEqual([]);
  });

  it("that is old goes when newer ones are there, and nothing else in the folder does", async () => {
    const { bench: one } = await bench();
    const to = temporaryFolder();
    writeFileSync(join(to, "holiday.jpg"), "x");
    for (let day = 0; day < 4; day += 1) await backUpOf(one.folder, to, 1_700_000_000_000 + day * 86_400_000);
    const all = backUpsIn(to);
    keepNewest(to, 2);
    expect(backUpsIn(to)).toEqual(all.slice(0, 2));
    expect(existsSync(join(to, "holiday.jpg"))).toBe(true);
  });
});

describe("learners who are due", () => {
  it("are those who did nothing here for longer than they are kept, but those on hold", async () => {
    const { bench: one, kasia } = await bench();
    await one.parts.people.list.add({ name: "Leo Ashdown", role: "learner" }, byBench);
    const leo = one.parts.people.all().find(({ name }) => name === "Leo Ashdown")?.id ?? "";
    await one.does("leave-attempt", {});
    await one.stop();
    opened(one.folder, ({ people, reading }) => {
      if (!people) throw new Error("no people");
      const due = (nowMs: number) => dueLearners(people.reader, reading, 3, nowMs).map(({ name }) => name);
      const nowMs = one.clock.wallMs();
      const yearMs = 365.25 * 86_400_000;
      expect(due(nowMs + 2.9 * yearMs)).toEqual([]);
      expect(due(nowMs + 3.1 * yearMs).sort()).toEqual(["Kasia Wrona", "Leo Ashdown"]);
      const record = people.reader.record(leo);
      if (record) people.writer.hold(record, true, byBench);
      expect(due(nowMs + 3.1 * yearMs)).toEqual(["Kasia Wrona"]);
      expect(people.reader.byId(kasia)?.isHeld).toBe(false);
    });
  });
});
