import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { run } from "../../../server/commands/judge.ts";
import { appealsPackSchema } from "../../../server/evidence/appeals-pack.schema.ts";
import { judgeAgain } from "../../../server/evidence/judge-again.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { answers, benchWithWork, byStaff } from "../desk/assessed-work.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { fileOf } from "./file-of.ts";

interface Packed {
  rows: { type: string; bytes: string; hash: string }[];
  documents: { bytes: string }[];
}

async function packed(): Promise<string> {
  const { bench, id } = await benchWithWork();
  await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "As seen." });
  return (await fileOf(bench, "appeals-pack.json", id)).toString("utf8");
}

/** Runs the command on a pack; gives its exit code and what it printed. */
async function judged(pack: string) {
  const path = join(temporaryFolder(), "appeals-pack.json");
  writeFileSync(path, pack);
  let said = "";
  const take = (line: string) => void (said += `${line}\n`);
  const spies = [
    vi.spyOn(console, "log").mockImplementation(take),
    vi.spyOn(console, "error").mockImplementation(take),
  ];
  onTestFinished(() => spies.forEach((spy) => spy.mockRestore()));
  return { code: await run([path]), said };
}

describe("an appeals pack", () => {
  it("is judged again away from its bench with one command: the same verdict, byte for byte", async () => {
    const { code, said } = await judged(await packed());
    expect(said).toContain("[ring-open/open]");
    expect(said).toContain("byte for byte");
    expect(code).toBe(0);
  });

  it("of which one byte is changed is not judged: what was changed is named", async () => {
    const pack = await packed();
    const change = (alter: (told: Packed) => void): string => {
      const told = JSON.parse(pack) as Packed;
      alter(told);
      return JSON.stringify(told);
    };
    const decision = await judged(
      change(({ rows }) => {
        const row = rows.find(({ type }) => type === "decided");
        const bytes = Buffer.from(row?.bytes ?? "", "base64")
          .toString("utf8")
          .replace("As seen", "As seem");
        if (row) row.bytes = Buffer.from(bytes).toString("base64");
      }),
    );
    expect(decision).toMatchObject({ code: 1, said: expect.stringContaining("(decided)") as string });
    const document = await judged(
      change(({ documents: [one] }) => {
        const bytes = Buffer.from(one?.bytes ?? "", "base64");
        bytes[10] = (bytes[10] ?? 0) ^ 1;
        if (one) one.bytes = bytes.toString("base64");
      }),
    );
    expect(document).toMatchObject({ code: 1, said: expect.stringContaining("document") as string });
  });

  it("that another rule pack judges otherwise says so, and that what was found then stands", async () => {
    const pack = appealsPackSchema.parse(JSON.parse(await packed()));
    const again = judgeAgain(pack, (wiring) => ({ ...judge(wiring), findings: [], packVersion: "uk-other" }));
    expect(again).toMatchObject({ isSame: false, again: { packVersion: "uk-other" } });
    expect("stored" in again && again.stored.findings).toHaveLength(1);
  });

  it("of work that was not handed in says that there is nothing to judge", async () => {
    const pack = appealsPackSchema.parse(JSON.parse(await packed()));
    const rows = pack.rows.filter(({ type }) => type !== "handed-in");
    expect(judgeAgain({ ...pack, rows }, judge)).toEqual({ cannot: "it was not handed in" });
  });
});

describe("the archive of a bench", () => {
  it("has every row of the log byte for byte and every document, a line each, and tells before how many", async () => {
    const { bench } = await benchWithWork();
    const lines = (await fileOf(bench, "archive.jsonl")).toString("utf8").trimEnd().split("\n");
    const told = lines.map((line) => JSON.parse(line) as { row?: { bytes: string }; document?: object });
    const rows = bench.rows();
    expect(told.flatMap(({ row }) => (row ? [row.bytes] : []))).toEqual(
      rows.map(({ bytes }) => Buffer.from(bytes).toString("base64")),
    );
    expect(told.filter(({ document }) => document).length).toBeGreaterThan(2);
    expect(lines).toHaveLength(1 + rows.length + told.filter(({ document }) => document).length);
  });
});
