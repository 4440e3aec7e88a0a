import { Ajv } from "ajv";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { evidenceSource } from "../../../server/evidence/evidence-source.ts";
import { xapiExports } from "../../../server/evidence/xapi.ts";
import { answers, benchWithWork, byStaff } from "../desk/assessed-work.ts";
import type { Asked } from "../../../server/evidence/attempt-evidence.ts";
import type { TestBench } from "../test-bench.ts";

interface Statement {
  id: string;
  version: string;
  verb: { id: string };
  object: { objectType: string; id: string };
  result?: { success?: boolean };
}

const asked: Asked = { language: "en" };

const isStatement = new Ajv({ allErrors: true }).compile(
  JSON.parse(readFileSync("tests/server/evidence/xapi.schema.json", "utf8")) as object,
);

async function statementsOf(bench: TestBench): Promise<Statement[][]> {
  const source = evidenceSource(bench.bench.core);
  if (!source) throw new Error("no records");
  return Promise.all(
    xapiExports.map(async (made) => {
      if (made.of !== "attempts") throw new Error("not of all");
      let text = "";
      for await (const piece of made.pieces(source, {}, asked)) text += String(piece);
      return text
        .split("\n")
        .filter((line) => line !== "")
        .map((line) => JSON.parse(line) as Statement);
    }),
  );
}

describe("the statements of assessed work", () => {
  it("are in the form of the standard in both versions: its end, what was decided, and what takes a decision back", async () => {
    const { bench, id } = await benchWithWork();
    const decide = (change: object = {}) =>
      byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "", ...change });
    await decide();
    await byStaff(bench, "assessor", "seal-decision", { attempt: id });
    const before = await statementsOf(bench);
    await decide({ correctsFor: "The ticks were set in haste." });
    const after = await statementsOf(bench);
    expect(after.map((statements) => statements[0]?.version)).toEqual(["1.0.3", "2.0.0"]);
    for (const [index, statements] of after.entries()) {
      for (const statement of statements)
        expect(isStatement(statement), JSON.stringify(isStatement.errors)).toBe(true);
      expect(statements.map(({ verb }) => verb.id.split("/").at(-1))).toEqual([
        "completed",
        "failed",
        "voided",
        "failed",
      ]);
      // What went out before goes out again as it was.
      expect(statements.slice(0, 2)).toEqual(before[index]);
      expect(statements[2]?.object).toEqual({ objectType: "StatementRef", id: statements[1]?.id });
      expect(new Set(statements.map((one) => one.id)).size).toBe(4);
      expect(statements[1]?.result?.success).toBe(false);
    }
  });

  it("are held by a schema that takes no other form", () => {
    expect(isStatement({ id: "1", version: "1.0.3" })).toBe(false);
    expect(isStatement({})).toBe(false);
  });
});
