import fc from "fast-check";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { run } from "../../../server/commands/judge.ts";
import { run as verify } from "../../../server/commands/verify.ts";
import { appealsPackSchema } from "../../../server/evidence/appeals-pack.schema.ts";
import { judgeAgain } from "../../../server/evidence/judge-again.ts";
import { verifyArchive } from "../../../server/evidence/verify-archive.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { answers, benchWithWork, byStaff } from "../desk/assessed-work.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import type { TestBench } from "../test-bench.ts";
import { fileOf } from "./file-of.ts";

interface Packed {
  rows: { type: string; bytes: string; hash: string }[];
  documents: { bytes: string }[];
}

async function packed(): Promise<string> {
  const { bench, id } = await benchWithWork({ isSealing: true });
  await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "As seen." });
  await byStaff(bench, "assessor", "seal-decision", { attempt: id });
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
    // Of the hand-in and of the decision.
    expect(said).toContain("2 seals, none changed");
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
    const rows = pack.rows.filter(({ type }) => type !== "handed-in" && type !== "sealed");
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
    expect(lines).toHaveLength(2 + rows.length + told.filter(({ document }) => document).length);
  });

  const saved = async (): Promise<{ bench: TestBench; text: string }> => {
    const { bench, id } = await benchWithWork();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "As seen." });
    return { bench, text: (await fileOf(bench, "archive.jsonl")).toString("utf8") };
  };
  /** Runs `verify` on an archive that has been changed, or not; gives its exit code and what it said. */
  async function verified(text: string): Promise<{ code: number; said: string }> {
    const path = join(temporaryFolder(), "archive.jsonl");
    writeFileSync(path, text);
    let said = "";
    const out = vi.spyOn(process.stdout, "write").mockImplementation((piece) => {
      said += String(piece);
      return true;
    });
    try {
      return { code: await verify([path]), said };
    } finally {
      out.mockRestore();
    }
  }

  it("is proved away from the bench with one command", async () => {
    const { bench, text } = await saved();
    const { code, said } = await verified(text);
    expect(said).toContain(`${bench.rows().length} records`);
    expect(said).toContain("none changed");
    expect(code).toBe(0);
  });

  it("of which a byte was changed is not sound, and the record is named: of a decision, a document, the head, the end", async () => {
    const { bench, text } = await saved();
    const decided = bench.rows().find(({ type }) => type === "decided");
    const bytes = Buffer.from(decided?.bytes ?? []);
    const changed = Buffer.from(bytes.toString("utf8").replace("As seen.", "As seem."), "utf8");
    const lines = text.trimEnd().split("\n");
    const document = lines.findIndex((line) => line.includes('"document"'));
    const cases: [string, string][] = [
      [
        text.replace(bytes.toString("base64"), changed.toString("base64")),
        `event ${decided?.sequence}: its content`,
      ],
      [
        text.replace(
          /("document":\{"hash":"\w+","bytes":")(.)/,
          (_, head: string, first: string) => head + (first === "A" ? "B" : "A"),
        ),
        "document",
      ],
      [text.replace('"softwareVersion":"', '"softwareVersion":"9'), "the file"],
      [lines.slice(0, -1).join("\n"), "cut off"],
      [lines.toSpliced(-3, 1).join("\n"), "a record before it is missing"],
      [lines.toSpliced(document, 1).join("\n"), "missing"],
      [text.replace('{"row":{', '{"row":{{'), "no such line"],
    ];
    for (const [broken, named] of cases) {
      expect(broken, named).not.toBe(text);
      const { code, said } = await verified(broken);
      expect(said).toContain(named);
      expect(code).toBe(1);
    }
  });

  it("in which any one byte is another is not sound", async () => {
    const { text } = await saved();
    await fc.assert(
      fc.asyncProperty(fc.nat(text.length - 1), fc.integer({ min: 1, max: 127 }), async (at, by) => {
        const was = text.charCodeAt(at);
        const broken = text.slice(0, at) + String.fromCharCode((was + by) % 128) + text.slice(at + 1);
        // The line end behind the last line is the only byte that says nothing.
        if (at === text.length - 1) return;
        expect((await verifyArchive(broken.replace(/\n$/, "").split("\n"))).isSound).toBe(false);
      }),
      { numRuns: 60 },
    );
  });
});
