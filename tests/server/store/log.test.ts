import Database from "better-sqlite3";
import fc from "fast-check";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { run as verifyCommand } from "../../../server/commands/verify.ts";
import { eventOfBytes } from "../../../server/store/event-bytes.ts";
import { migrations } from "../../../server/store/migrations.ts";
import { LogReader } from "../../../server/store/log-reader.ts";
import { LogWriter, type NewEvent } from "../../../server/store/log-writer.ts";
import { openForReading, openForWriting } from "../../../server/store/open-database.ts";
import { StoreError } from "../../../server/store/store-error.ts";
import { proveLog, verifyLog } from "../../../server/store/verify-log.ts";
import { actorRoles, type Author, byBench } from "../../../shared/protocol/author.ts";
import { eventTypes } from "../../../shared/protocol/log-row.ts";
import { testDepth } from "../../depth.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";

const byLearner: Author = { by: "learner", session: "session-1" };
const someEvents: NewEvent[] = [
  { attemptId: null, type: "boot", author: byBench, content: { softwareVersion: "0.1.0" } },
  { attemptId: "attempt-1", type: "attempt-started", author: byLearner, content: { scenario: "first-spur" } },
  { attemptId: "attempt-1", type: "sensed", author: byBench, content: { added: ["a~b"], removed: [] } },
  { attemptId: "attempt-1", type: "handed-in", author: byLearner, content: {} },
];

/** A log with three boots of the events above. */
function writtenLog(): { path: string; rowCount: number } {
  const path = join(temporaryFolder(), "spurwise.db");
  for (let boot = 0; boot < 3; boot += 1) {
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, new ManualClock());
    for (const event of someEvents) writer.append([event]);
    database.close();
  }
  return { path, rowCount: 3 * someEvents.length };
}

/** Changes the file as somebody with a database tool would, the triggers taken away. */
function tamper(path: string, sql: string, ...values: unknown[]): void {
  const database = new Database(path);
  const triggers = database
    .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`);
  database.prepare(sql).run(...values);
  database.pragma("wal_checkpoint(TRUNCATE)");
  database.close();
}

function check(path: string) {
  const database = openForReading(path);
  try {
    return verifyLog(database);
  } finally {
    database.close();
  }
}

describe("the log", () => {
  it("is sound after any number of starts, each start a boot of its own with events from 0", () => {
    const { path, rowCount } = writtenLog();
    expect(check(path)).toMatchObject({ isSound: true, rowCount });
    const database = openForReading(path);
    const places = [...new LogReader(database).rows()].map(({ boot, sequence }) => [boot, sequence]);
    expect(places).toEqual([1, 2, 3].flatMap((boot) => [0, 1, 2, 3].map((sequence) => [boot, sequence])));
    database.close();
  });

  it("is sound for who proves it slice by slice while the bench goes on writing", () => {
    const { path, rowCount } = writtenLog();
    const writing = openForWriting(path);
    const writer = new LogWriter(writing, path, new ManualClock());
    const reading = openForReading(path);
    // Slices of every size: between the last one and the end mark something is written as well.
    for (const sliceRowCount of [1, 2, 3, 5, rowCount]) {
      const before = new LogReader(reading).rows();
      const count = [...before].length;
      const proof = proveLog(reading, sliceRowCount);
      let step = proof.next();
      while (!step.done) {
        writer.append(someEvents);
        step = proof.next();
      }
      expect(step.value).toMatchObject({ isSound: true, rowCount: count });
      // What was written meanwhile is there for the next.
      expect(check(path)).toMatchObject({ isSound: true });
    }
    reading.close();
    writing.close();
  });

  it("cannot be changed or shortened through the program's own connection", () => {
    const { path } = writtenLog();
    const database = openForWriting(path);
    expect(() => database.exec("UPDATE log SET type = 'boot' WHERE sequence = 2")).toThrow(/append-only/);
    expect(() => database.exec("DELETE FROM log WHERE sequence = 3")).toThrow(/append-only/);
    expect(() => database.exec("REPLACE INTO log SELECT * FROM log WHERE sequence = 3")).toThrow();
    expect(check(path)).toMatchObject({ isSound: true });
    database.close();
  });

  it.each([
    {
      edit: "a flipped byte of the content",
      sql: "UPDATE log SET bytes = CAST(replace(CAST(bytes AS TEXT), 'a~b', 'a~c') AS BLOB) WHERE boot = 2 AND sequence = 2",
      first: "boot 2, event 2",
    },
    {
      edit: "another time",
      sql: "UPDATE log SET wall_ms = wall_ms + 1 WHERE boot = 2 AND sequence = 1",
      first: "boot 2, event 1",
    },
    {
      edit: "another clock state",
      sql: "UPDATE log SET clock_state = 'battery' WHERE boot = 1 AND sequence = 3",
      first: "boot 1, event 3",
    },
    {
      edit: "another attempt",
      sql: "UPDATE log SET attempt_id = 'attempt-2' WHERE boot = 3 AND sequence = 2",
      first: "boot 3, event 2",
    },
    {
      edit: "an attempt taken away",
      sql: "UPDATE log SET attempt_id = NULL WHERE boot = 3 AND sequence = 2",
      first: "boot 3, event 2",
    },
    {
      edit: "a type of its own",
      sql: "UPDATE log SET type = 'approved' WHERE boot = 1 AND sequence = 1",
      first: "boot 1, event 1",
    },
    {
      edit: "a removed record",
      sql: "DELETE FROM log WHERE boot = 2 AND sequence = 1",
      first: "boot 2, event 2",
    },
    {
      edit: "a removed first record",
      sql: "DELETE FROM log WHERE boot = 1 AND sequence = 0",
      first: "boot 1, event 1",
    },
    { edit: "a removed boot", sql: "DELETE FROM log WHERE boot = 2", first: "boot 3, event 0" },
    {
      edit: "a removed last record",
      sql: "DELETE FROM log WHERE boot = 3 AND sequence = 3",
      first: "boot 3, event 3",
    },
    {
      edit: "two records that changed places",
      sql: "UPDATE log SET sequence = CASE sequence WHEN 1 THEN 102 ELSE 101 END WHERE boot = 2 AND sequence IN (1, 2)",
      first: "boot 2, event 3",
    },
  ])("shows $edit and names the first bad record", ({ sql, first }) => {
    const { path } = writtenLog();
    tamper(path, sql);
    const found = check(path);
    expect(found).toMatchObject({ isSound: false });
    expect(found.isSound ? "" : found.firstBadRecord).toContain(first);
  });

  it("shows any one bit flipped in the content, the hashes or the times of any record", () => {
    const { path } = writtenLog();
    const clean = readFileSync(path);
    const columns = ["bytes", "hash", "previous_hash"] as const;
    fc.assert(
      fc.property(
        fc.record({
          boot: fc.integer({ min: 1, max: 3 }),
          sequence: fc.integer({ min: 0, max: 3 }),
          column: fc.constantFrom(...columns),
          bit: fc.nat(),
        }),
        ({ boot, sequence, column, bit }) => {
          writeFileSync(path, clean);
          const database = new Database(path);
          const found = database
            .prepare<[number, number], Record<string, Buffer>>(
              "SELECT * FROM log WHERE boot = ? AND sequence = ?",
            )
            .get(boot, sequence);
          database.close();
          const bytes = Buffer.from(found?.[column] ?? []);
          const at = bit % (bytes.length * 8);
          bytes.writeUInt8(bytes.readUInt8(at >> 3) ^ (1 << (at & 7)), at >> 3);
          tamper(path, `UPDATE log SET ${column} = ? WHERE boot = ? AND sequence = ?`, bytes, boot, sequence);
          expect(check(path).isSound).toBe(false);
        },
      ),
      { numRuns: 40 * testDepth },
    );
  });

  it("shows a document that was changed or taken away", () => {
    const path = join(temporaryFolder(), "spurwise.db");
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, new ManualClock());
    const boardHash = writer.keepDocument("board", Buffer.from('{"id":"small"}'));
    expect(writer.keepDocument("board", Buffer.from('{"id":"small"}'))).toBe(boardHash);
    writer.append([{ attemptId: null, type: "boot", author: byBench, content: { boardHash } }]);
    database.close();
    expect(check(path)).toMatchObject({ isSound: true, documentCount: 1 });
    const clean = readFileSync(path);
    tamper(path, "UPDATE document SET bytes = ?", Buffer.from('{"id":"large"}'));
    expect(check(path)).toMatchObject({ isSound: false });
    writeFileSync(path, clean);
    tamper(path, "DELETE FROM document");
    expect(check(path)).toMatchObject({ isSound: false, reason: "the board it was made with is missing" });
  });

  it("holds every event of any stream, in order, whatever the wall clock does", () => {
    // A seal and a person's row are proved by what they say; a jump of the clock is the log's own.
    const proved = new Set(["clock-jumped", "sealed", "person-kept"]);
    const event = fc.record({
      attemptId: fc.constantFrom(null, "a", "b"),
      type: fc.constantFrom(...eventTypes.filter((type) => !proved.has(type))),
      author: fc.record({
        by: fc.constantFrom(...actorRoles),
        session: fc.option(fc.uuid()),
      }),
      content: fc.dictionary(fc.string(), fc.jsonValue(), { maxKeys: 3 }),
    });
    const act = fc.oneof(
      fc.record({ append: fc.array(event, { minLength: 1, maxLength: 4 }) }),
      fc.record({ setWallMs: fc.integer({ min: -1e12, max: 3e12 }) }),
      fc.record({ advanceMs: fc.nat(5000) }),
      fc.constant({ restart: true as const }),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
        const path = join(temporaryFolder(), "spurwise.db");
        const clock = new ManualClock();
        let database = openForWriting(path);
        let writer = new LogWriter(database, path, clock);
        const said: NewEvent[] = [];
        for (const one of acts) {
          if ("append" in one) {
            writer.append(one.append);
            said.push(...one.append);
          } else if ("setWallMs" in one) clock.setWall(one.setWallMs);
          else if ("advanceMs" in one) clock.advance(one.advanceMs);
          else {
            database.close();
            database = openForWriting(path);
            writer = new LogWriter(database, path, clock);
          }
        }
        const rows = [...new LogReader(database).rows()].filter(({ type }) => type !== "clock-jumped");
        const held = rows.map(({ attemptId, type, bytes }) => ({
          attemptId,
          type,
          ...eventOfBytes(bytes),
        }));
        expect(held).toEqual(JSON.parse(JSON.stringify(said)));
        expect(verifyLog(database).isSound).toBe(true);
        database.close();
      }),
      { numRuns: 30 * testDepth },
    );
  });

  it("records that the wall clock was set, with the time it should have been", () => {
    const path = join(temporaryFolder(), "spurwise.db");
    const clock = new ManualClock();
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, clock);
    writer.append([{ attemptId: null, type: "boot", author: byBench, content: {} }]);
    clock.advance(10_000);
    const expectedWallMs = clock.wallMs();
    clock.setWall(expectedWallMs + 3_600_000);
    const rows = writer.append([{ attemptId: "a", type: "ready", author: byLearner, content: {} }]);
    expect(rows.map(({ type }) => type)).toEqual(["clock-jumped", "ready"]);
    expect(JSON.parse(Buffer.from(rows[0]?.bytes ?? []).toString("utf8"))).toEqual({
      expectedWallMs,
      wallMs: expectedWallMs + 3_600_000,
      author: { by: "bench", session: null },
    });
    database.close();
  });

  it("says that the disk is full, keeps what it had and goes on when there is room again", () => {
    const path = join(temporaryFolder(), "spurwise.db");
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, new ManualClock());
    writer.append(someEvents);
    const pages = Number(database.pragma("page_count", { simple: true }));
    database.pragma(`max_page_count = ${pages}`);
    const large: NewEvent = {
      attemptId: "attempt-1",
      type: "ready",
      author: byLearner,
      content: { text: "x".repeat(20_000) },
    };
    const refusal = (): unknown => {
      try {
        return writer.append([large]);
      } catch (error) {
        return error instanceof StoreError ? error.code : error;
      }
    };
    expect(refusal()).toBe("disk-full");
    expect(check(path)).toMatchObject({ isSound: true, rowCount: someEvents.length });
    database.pragma("max_page_count = 100000");
    expect(writer.append([large])).toHaveLength(1);
    expect(check(path)).toMatchObject({ isSound: true, rowCount: someEvents.length + 1 });
    database.close();
  });
});

describe("the records file", () => {
  it("is written through to the disk on every connection, also when it is opened again", () => {
    const { path } = writtenLog();
    for (let turn = 0; turn < 2; turn += 1) {
      const writing = openForWriting(path);
      const reading = openForReading(path);
      writing.prepare("SELECT count(*) FROM log").get();
      reading.prepare("SELECT count(*) FROM log").get();
      expect(writing.pragma("journal_mode", { simple: true })).toBe("wal");
      expect(writing.pragma("synchronous", { simple: true })).toBe(2);
      expect(reading.pragma("synchronous", { simple: true })).toBe(2);
      reading.close();
      writing.close();
    }
  });

  it("comes from every earlier version to this one with its rows kept", () => {
    for (let version = 0; version <= migrations.length; version += 1) {
      const path = join(temporaryFolder(), "spurwise.db");
      openForWriting(path, migrations.slice(0, version)).close();
      const database = openForWriting(path);
      expect(database.pragma("user_version", { simple: true })).toBe(migrations.length);
      expect(new LogWriter(database, path, new ManualClock()).append(someEvents)).toHaveLength(4);
      database.close();
    }
  });

  it("of a later version is refused and not touched", () => {
    const { path } = writtenLog();
    const database = new Database(path);
    database.pragma(`user_version = ${migrations.length + 1}`);
    database.pragma("journal_mode = DELETE");
    database.close();
    const before = readFileSync(path);
    expect(() => openForWriting(path)).toThrow(
      expect.objectContaining({ code: "newer-than-program" }) as Error,
    );
    expect(() => openForReading(path)).toThrow(
      expect.objectContaining({ code: "newer-than-program" }) as Error,
    );
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it("that is damaged is kept as it is, never replaced by an empty one", () => {
    const path = join(temporaryFolder(), "spurwise.db");
    const rubbish = Buffer.alloc(8192, 7);
    writeFileSync(path, rubbish);
    expect(() => openForWriting(path)).toThrow(expect.objectContaining({ code: "damaged" }) as Error);
    expect(readFileSync(path).equals(rubbish)).toBe(true);
  });

  it("with a step that fails half-way stays at the step before", () => {
    const { path } = writtenLog();
    const broken = [...migrations, "CREATE TABLE extra (a TEXT) STRICT; INSERT INTO nowhere VALUES (1);"];
    expect(() => openForWriting(path, broken)).toThrow(StoreError);
    expect(check(path)).toMatchObject({ isSound: true });
    const database = openForWriting(path);
    expect(database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'extra'").get()).toBeUndefined();
    database.close();
  });
});

describe("the verify command", () => {
  const exitOf = (path: string): Promise<number> => verifyCommand([path]);

  it("answers 0 for a sound log, 1 for a changed one, 2 where there is none", async () => {
    const { path } = writtenLog();
    expect(await exitOf(path)).toBe(0);
    tamper(path, "UPDATE log SET wall_ms = 0 WHERE boot = 1 AND sequence = 2");
    expect(await exitOf(path)).toBe(1);
    expect(await exitOf(join(temporaryFolder(), "none.db"))).toBe(2);
  });

  it("does not write to the file it checks", async () => {
    const { path } = writtenLog();
    const before = { bytes: readFileSync(path), changedMs: statSync(path).mtimeMs };
    expect(await exitOf(path)).toBe(0);
    expect(readFileSync(path).equals(before.bytes)).toBe(true);
    expect(statSync(path).mtimeMs).toBe(before.changedMs);
  });
});
