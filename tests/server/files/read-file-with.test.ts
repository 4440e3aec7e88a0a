import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { jsonFilesIn, readFileWith } from "../../../server/files/read-file-with.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";
import { temporaryFolder } from "../temporary-folder.ts";

const put = (folder: string, name: string, content: string | Buffer): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

describe("reading a file from outside", () => {
  it("gives what the reader gives", () => {
    const path = put(temporaryFolder(), "good.json", '{"version":1,"stations":[],"cables":[]}');
    expect(readFileWith(path, readWiring)).toEqual({
      ok: true,
      value: { version: 1, stations: [], cables: [] },
    });
  });

  it("gives what the reader gives of what comes through a pipe, which says no size", async () => {
    const folder = temporaryFolder();
    const content = JSON.stringify({ version: 1, stations: [], cables: [], note: "x".repeat(200_000) });
    const [file, pipe] = [put(folder, "long.json", content), join(folder, "pipe")];
    execFileSync("mkfifo", [pipe]);
    const writer = spawn("sh", ["-c", `cat "${file}" > "${pipe}"`]);
    const seen: string[] = [];
    readFileWith(pipe, (text, name) => {
      seen.push(text);
      return { ok: true, value: name };
    });
    await new Promise((resolve) => writer.once("close", resolve));
    expect(seen).toEqual([content]);
  });

  it.each<{ what: string; pathIn: (folder: string) => string; says: string }>([
    { what: "is not there", pathIn: (f) => join(f, "nowhere.json"), says: "it is not there. Check the name" },
    { what: "is a folder", pathIn: (f) => f, says: "it is a folder. Name a file in it" },
    {
      what: "cannot be reached",
      pathIn: (f) => join(put(f, "file.json", "{}"), "in-a-file.json"),
      says: "it cannot be read (ENOTDIR)",
    },
    {
      what: "is no text",
      pathIn: (f) => put(f, "image.json", Buffer.from([0x89, 0xff, 0xfe])),
      says: "not UTF-8 text",
    },
    {
      what: "is far too large",
      pathIn: (f) => put(f, "large.json", " ".repeat(8_000_001)),
      says: "larger than 8 MB",
    },
    { what: "never ends and says no size", pathIn: () => "/dev/zero", says: "larger than 8 MB" },
    { what: "is no JSON", pathIn: (f) => put(f, "text.json", "hello"), says: "this is not JSON" },
  ])("refuses a file that $what, by name and with a remedy", ({ pathIn, says }) => {
    const path = pathIn(temporaryFolder());
    const read = readFileWith(path, readWiring);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]?.file).toBe(path);
    expect(`${read.problems[0]?.message}. ${read.problems[0]?.remedy}`).toContain(says);
  });

  it("lists the JSON files of a folder by name, schemas left out, and none of a folder that is not there", () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, "deeper"));
    for (const name of ["b.json", "a.json", "wiring.schema.json", "notes.txt"]) put(folder, name, "{}");
    expect(jsonFilesIn(folder)).toEqual([join(folder, "a.json"), join(folder, "b.json")]);
    expect(jsonFilesIn(join(folder, "nowhere"))).toEqual([]);
  });
});
