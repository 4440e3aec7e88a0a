import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { aDay, diskWrites, processWrites } from "../../../server/machine/disk-writes.ts";
import { powerOf, readPower } from "../../../server/machine/power.ts";
import { CommitTimes } from "../../../server/store/commit-times.ts";
import { temporaryFolder } from "../temporary-folder.ts";

describe("the power of a Raspberry Pi", () => {
  // Raspberry Pi documentation, "get_throttled": 0x50000 is the worked example, under-voltage and throttling have occurred.
  it.each([
    ["0", [], []],
    ["throttled=0x50000\n", [], ["undervoltage", "throttled"]],
    ["0x1", ["undervoltage"], []],
    ["50005\n", ["undervoltage", "throttled"], ["undervoltage", "throttled"]],
    ["a000a", ["frequency-capped", "too-warm"], ["frequency-capped", "too-warm"]],
    ["80000000", [], []],
  ])("reads %s", (text, now, sinceStart) => {
    expect(powerOf(text)).toEqual({ now, sinceStart });
  });

  it("is not known from a text that is no such word, nor where there is no file", () => {
    for (const text of ["", "none", "0xg", "123456789", "-1"]) expect(powerOf(text), text).toBeUndefined();
    expect(readPower("/nonexistent/get_throttled")).toBeNull();
    const file = join(temporaryFolder(), "get_throttled");
    writeFileSync(file, "50000\n");
    expect(readPower(file)).toEqual({ now: [], sinceStart: ["undervoltage", "throttled"] });
  });
});

describe("what is written to the disk", () => {
  // Linux, Documentation/admin-guide/iostats: field 7 after the name is sectors written, each of 512 bytes.
  const stats = [
    " 179       0 mmcblk0 100 1 2000 30 40 5 6000 70 0 80 90 0 0 0 0",
    " 179       2 mmcblk0p2 10 1 200 3 4 5 100 7 0 8 9 0 0 0 0",
  ].join("\n");

  it("is what the system counts for the disk that the data lie on, in bytes", () => {
    expect(diskWrites(stats, 179, 0)).toBe(6000 * 512);
    expect(diskWrites(stats, 179, 2)).toBe(51_200);
    expect(diskWrites(stats, 8, 0)).toBeNull();
    expect(diskWrites("", 179, 2)).toBeNull();
  });

  it("is what the system counts for the program, without what was never put there", () => {
    expect(
      processWrites("rchar: 9\nwchar: 800\nread_bytes: 0\nwrite_bytes: 4096\ncancelled_write_bytes: 0\n"),
    ).toBe(4096);
    expect(processWrites("")).toBeNull();
  });

  it("is so much a day at its pace, and nothing before a minute has gone by", () => {
    expect(aDay(1000, 3_600_000)).toBe(24_000);
    expect(aDay(1000, 59_999)).toBeNull();
    expect(aDay(null, 3_600_000)).toBeNull();
  });
});

describe("the time to be on the disk", () => {
  it("is the middle and the worst of the last two hundred", () => {
    const times = new CommitTimes();
    expect(times.summary).toBeNull();
    times.took(900);
    for (let count = 0; count < 199; count += 1) times.took(count < 150 ? 2 : 30);
    expect(times.summary).toEqual({ medianMs: 2, worstMs: 900, count: 200 });
    times.took(2);
    expect(times.summary).toEqual({ medianMs: 2, worstMs: 30, count: 200 });
  });
});
