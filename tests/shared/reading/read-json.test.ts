import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { readWith } from "../../../shared/reading/read-json.schema.ts";
import { testDepth } from "../../depth.ts";

const schema = z.strictObject({
  version: z.literal(1),
  kind: z.enum(["way", "fcu"]),
  lengthM: z.number().positive().max(100).optional(),
  count: z.number().int().min(1).optional(),
  gangs: z.union([z.literal(1), z.literal(2)]).optional(),
  list: z
    .array(z.strictObject({ csaMm2: z.number() }))
    .max(2)
    .optional(),
  pair: z.tuple([z.string(), z.boolean()]).optional(),
  name: z.string().min(2).optional(),
  want: z
    .discriminatedUnion("by", [
      z.strictObject({ by: z.literal("name"), learner: z.string() }),
      z.strictObject({ by: z.literal("badge"), badge: z.string() }),
    ])
    .optional(),
  lines: z.partialRecord(z.enum(["L", "N"]), z.number()).optional(),
  byStation: z.record(z.string(), z.strictObject({ switched: z.boolean() })).optional(),
});
const good = { version: 1, kind: "way" };

describe("what is said of a file that cannot be used", () => {
  it.each([
    {
      what: "a field without its unit",
      file: { length: 3 },
      field: "length",
      remedy: 'Did you mean "lengthM"?',
    },
    {
      what: "an unknown field",
      file: { colour: "red" },
      field: "colour",
      remedy: "Known here: version, kind,",
    },
    {
      what: "a deep unknown field",
      file: { list: [{ csaMm2: 1 }, { csaMm2: 1, csa: 2 }] },
      field: "list[1].csa",
      remedy: '"csaMm2"',
    },
    {
      what: "an unknown field in a tagged object",
      file: { want: { by: "badge", badge: "a", badg: "b" } },
      field: "want.badg",
      remedy: '"badge"',
    },
    {
      what: "a field of the other tag",
      file: { want: { by: "badge", badge: "a", learner: "b" } },
      field: "want.learner",
      remedy: "Known here: by, badge.",
    },
    {
      what: "an unknown key of a closed list",
      file: { lines: { Q: 1 } },
      field: "lines.Q",
      remedy: "Known here: L, N.",
    },
    {
      what: "an unknown field by station",
      file: { byStation: { "fcu-1": { switched: true, switchd: 1 } } },
      field: "byStation.fcu-1.switchd",
      remedy: '"switched"',
    },
    {
      what: "a missing field",
      file: { kind: undefined },
      field: "kind",
      remedy: 'Write one of "way", "fcu".',
    },
    { what: "a missing number", file: { list: [{}] }, field: "list[0].csaMm2", remedy: "Add it: a number." },
    { what: "a misspelt word", file: { kind: "wey" }, field: "kind", remedy: 'Did you mean "way"?' },
    { what: "another version", file: { version: 2 }, field: "version", remedy: "Write 1." },
    { what: "a number in quotes", file: { lengthM: "3" }, field: "lengthM", remedy: "Write a number." },
    { what: "a length of nothing", file: { lengthM: 0 }, field: "lengthM", remedy: "Write more than 0." },
    { what: "too great a length", file: { lengthM: 101 }, field: "lengthM", remedy: "Write at most 100." },
    { what: "half a count", file: { count: 1.5 }, field: "count", remedy: "Write a whole number." },
    { what: "a third gang", file: { gangs: 3 }, field: "gangs", remedy: "Write one of 1, 2." },
    {
      what: "too long a list",
      file: { list: [{ csaMm2: 1 }, { csaMm2: 1 }, { csaMm2: 1 }] },
      field: "list",
      remedy: "at most 2 items",
    },
    { what: "too short a pair", file: { pair: ["a"] }, field: "pair", remedy: "" },
    { what: "too short a text", file: { name: "a" }, field: "name", remedy: "at least 2 letters" },
    {
      what: "an unknown tag",
      file: { want: { by: "bage", badge: "x" } },
      field: "want.by",
      remedy: 'Did you mean "badge"?',
    },
    { what: "an object for a list", file: { list: {} }, field: "list", remedy: "Write a list in [ ]." },
  ])("names file, field and remedy for $what", ({ file, field, remedy }) => {
    const read = readWith(schema, JSON.stringify({ ...good, ...file }), "demo.json");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toMatchObject({ file: "demo.json", field });
    expect(read.problems[0]?.remedy).toContain(remedy);
    expect(read.problems[0]?.message).not.toBe("");
  });

  it("names line and column where it is not JSON", () => {
    const read = readWith(schema, '{\n  "version": 1,,\n}', "demo.json");
    expect(read).toMatchObject({ ok: false, problems: [{ file: "demo.json", field: "line 2, column 16" }] });
  });

  it.each([[null], [[]], [3], [true], [undefined]])("is one problem of the whole file for %s", (value) => {
    const read = readWith(schema, value, "demo.json");
    expect(read).toMatchObject({ ok: false, problems: [{ field: "the whole file" }] });
  });

  it("lists everything that is wrong, not only the first", () => {
    const read = readWith(schema, { ...good, kind: "wey", lengthM: -1, colour: 1, size: 2 }, "demo.json");
    expect(read.ok || read.problems.map(({ field }) => field)).toEqual(["kind", "lengthM", "colour", "size"]);
  });

  it("comes from the further check only once the schema is content", () => {
    const check = () => [{ field: "kind", message: "no", remedy: "Change it." }];
    expect(readWith(schema, good, "demo.json", check)).toEqual({
      ok: false,
      problems: [{ file: "demo.json", field: "kind", message: "no", remedy: "Change it." }],
    });
    const read = readWith(schema, { ...good, version: 2 }, "demo.json", check);
    expect(read.ok || read.problems.map(({ field }) => field)).toEqual(["version"]);
  });
});

describe("reading", () => {
  it("gives the value of a good file, a leading byte order mark or none", () => {
    expect(readWith(schema, JSON.stringify(good), "demo.json")).toEqual({ ok: true, value: good });
    expect(readWith(schema, `\uFEFF${JSON.stringify(good)}`, "demo.json")).toEqual({ ok: true, value: good });
  });

  it("never throws and never takes a strange value", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.anything()), (input) => {
        const read = readWith(schema, input, "demo.json");
        expect(read.ok || read.problems.length > 0).toBe(true);
      }),
      { numRuns: 500 * testDepth },
    );
  });

  it("refuses a __proto__ field and leaves objects as they are", () => {
    const read = readWith(schema, '{"version":1,"kind":"way","__proto__":{"polluted":true}}', "demo.json");
    expect(read).toMatchObject({ ok: false, problems: [{ field: "__proto__" }] });
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});
