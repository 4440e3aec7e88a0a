import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { schemaFiles, schemaText } from "../../../server/commands/schemas.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { testDepth } from "../../depth.ts";

const scenarios = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => JSON.parse(readFileSync(`scenarios/${name}`, "utf8")) as Scenario);

const board = {
  version: 1,
  id: "demo-board",
  name: "Demo board",
  wiring: { kind: "direct", pins: [2, 3, 4, 17, 27, 22] },
  codes: [{ code: 1, csaMm2: 2.5, cores: ["brown", "blue", "earth"] }],
  stations: ["way-1", "socket-1"].map((id, index) => ({
    id,
    kind: index === 0 ? "way" : "socket-outlet",
    label: "1",
    face: { x: 0, y: 0, width: 0.2, height: 0.2 },
    entries: [
      {
        letter: "a",
        side: "feed",
        lines: { L: index * 3, N: index * 3 + 1, E: index * 3 + 2 },
        codeContacts: [0],
      },
    ],
  })),
  probes: { red: 1, black: 2 },
};

const goodFiles: Record<string, unknown[]> = {
  "shared/scenario/scenario.schema.json": scenarios,
  "shared/wiring/wiring.schema.json": [
    ...scenarios.flatMap((scenario) =>
      scenario.wrongAnswers.map(({ built }) => toWiring({ scenario, built })),
    ),
    {
      version: 1,
      stations: [{ id: "way-1", kind: "way", entries: [{ letter: "a", side: "feed" }] }],
      cables: [],
      unknown: ["way-1.a.L"],
      wants: [
        { kind: "shape", of: "way-1", shape: "ring" },
        { kind: "device", way: "way-1", ratingA: [32] },
        { kind: "readings", way: "way-1", tests: ["polarity"] },
        { kind: "fault-named", faults: ["open-core"] },
      ],
      readings: [{ test: "polarity", way: "way-1", isPolarityRight: true, judged: "pass" }],
      namedFaults: ["open-core"],
    },
  ],
  "shared/board/board.schema.json": [board],
};

const spots = (value: unknown, path: (string | number)[] = []): (string | number)[][] => {
  if (typeof value !== "object" || value === null) return [path];
  const below = Array.isArray(value)
    ? value.flatMap((item, index) => spots(item, [...path, index]))
    : Object.entries(value).flatMap(([key, item]) => spots(item, [...path, key]));
  return [path, ...below];
};

type Damage = { at: number; how: "replace" | "remove" | "add"; value: unknown };

const damaged = (file: unknown, { at, how, value }: Damage): unknown => {
  const copy: unknown = structuredClone(file);
  const all = spots(copy);
  const path = all[at % all.length] ?? [];
  const last = path.at(-1);
  if (last === undefined) return how === "replace" ? value : copy;
  const holder = path
    .slice(0, -1)
    .reduce<unknown>((o, key) => (o as Record<string, unknown>)[key], copy) as Record<
    string | number,
    unknown
  >;
  if (how === "replace") holder[last] = value;
  else if (how === "remove") {
    if (Array.isArray(holder)) holder.splice(Number(last), 1);
    else delete holder[last];
  } else {
    const target = holder[last];
    if (Array.isArray(target)) target.push(value);
    else if (typeof target === "object" && target !== null)
      (target as Record<string, unknown>)["extra"] = value;
  }
  return copy;
};

const anyDamage: fc.Arbitrary<Damage> = fc.record({
  at: fc.nat(),
  how: fc.constantFrom("replace", "remove", "add"),
  value: fc.oneof(
    fc.constantFrom<unknown>(
      0,
      -1,
      1,
      2,
      1.5,
      1e9,
      "",
      "way",
      "a.b",
      "a.b~c.d",
      "x y",
      "L",
      true,
      null,
      [],
      {},
    ),
    fc.jsonValue({ maxDepth: 2 }),
  ),
});

describe.each(schemaFiles)("$path", (file) => {
  const text = readFileSync(file.path, "utf8");
  const accepts = new Ajv2020({ strict: true, strictTuples: false, strictTypes: false }).compile(
    JSON.parse(text) as object,
  );
  const good = goodFiles[file.path] ?? [];

  it("is what the reader's schema gives today", () => {
    expect(text).toBe(schemaText(file));
  });

  it("takes every good file, and so does the reader", () => {
    expect(good.length).toBeGreaterThan(0);
    for (const value of good) {
      expect(accepts(value), JSON.stringify(accepts.errors)).toBe(true);
      expect(file.schema.safeParse(value).success).toBe(true);
    }
  });

  // ajv is the outside judge. What the reader alone can say ("custom") JSON Schema has no word for.
  it("takes and refuses damaged files as the reader does", () => {
    let refusedCount = 0;
    fc.assert(
      fc.property(fc.constantFrom(...good), anyDamage, (value, damage) => {
        const bad = damaged(value, damage);
        const read = file.schema.safeParse(bad);
        const isShape = read.error?.issues.some(({ code }) => code !== "custom") ?? false;
        if (isShape) refusedCount += 1;
        if (read.success || isShape) expect(accepts(bad), JSON.stringify(damage)).toBe(read.success);
      }),
      { numRuns: 600 * testDepth },
    );
    expect(refusedCount).toBeGreaterThan(100);
  });
});
