import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { openRecords } from "../../../server/open-records.ts";
import { openForWriting, schemaVersion } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";
import { expectAsRebuilt } from "./table-of-attempts.ts";

const folder = "tests/server/store/landed";
const versions = readdirSync(folder).map((name) => Number(/^version-(\d+)\.db\.gz$/.exec(name)?.[1]));

/** A data folder as a bench of that version of the records left it when it was stopped in the middle of a second task. */
function dataOf(version: number): { data: string; path: string } {
  const data = temporaryFolder();
  const path = join(data, "spurwise.db");
  writeFileSync(path, gunzipSync(readFileSync(join(folder, `version-${version}.db.gz`))));
  return { data, path };
}

describe("the records of every landed version", () => {
  it("are kept, each made by the program of its day", () => {
    expect(versions.sort()).toEqual(Array.from({ length: schemaVersion - 1 }, (_, index) => index + 1));
  });

  it.each(versions)(
    "are brought up to date, proved, listed and gone on with: version %i",
    async (version) => {
      const { data, path } = dataOf(version);
      const opened = openRecords(path, (note) => expect(note).toBeUndefined());
      expect(opened.isBesideDamaged).toBe(false);
      expect(opened.writing.pragma("user_version", { simple: true })).toBe(schemaVersion);
      expect(verifyLog(opened.writing)).toMatchObject({ isSound: true });
      const { attempts } = opened.records.attempts.page({}, 10);
      expect(attempts.map(({ status, scenario }) => [scenario, status]).sort()).toEqual([
        ["first-spur", "handed-in"],
        ["first-spur", "open"],
      ]);
      expectAsRebuilt(opened.writing);
      opened.reading.close();
      opened.writing.close();

      const bench = await new TestBench({ folder: data }).start();
      await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
      expect(bench.attempt()).toMatchObject({ mode: "practice", status: "open" });
      await bench.does("go-to-step", { step: "wire" });
      await bench.does("hand-in", {});
      expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
    },
  );

  it("of a version to come are refused by a clear word and not touched", () => {
    const { path } = dataOf(2);
    const database = openForWriting(path);
    database.pragma(`user_version = ${schemaVersion + 1}`);
    database.pragma("wal_checkpoint(TRUNCATE)");
    database.close();
    const before = readFileSync(path);
    expect(() => openRecords(path, () => undefined)).toThrow(
      expect.objectContaining({ code: "newer-than-program" }) as Error,
    );
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});
