import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { acts } from "../../server/acts/acts.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import type { ActName } from "../../shared/protocol/acts.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Read } from "../../shared/reading/problem.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";
import { testDepth } from "../depth.ts";
import { seeded } from "../seeded.ts";
import { actSamples } from "../server/acts/act-samples.ts";

/** What is put into a text: what poses as something else, numbers beyond all reckoning, halves of what JSON needs. */
const pieces = [
  '{"length":{"valueOf":1}}',
  '{"length":1,"toString":null}',
  '{"__proto__":{"x":1}}',
  '{"constructor":1,"then":1}',
  "1e400",
  "-1e400",
  "123456789012345678901234567890",
  "null",
  "[]",
  "[[[[[[[[",
  '"',
  "\\\\u0000",
  "\\u0000",
  "\\ud800",
  "//",
  ",",
  ":",
  "{",
  "}",
  "]",
];

/** A text with one to four changes anywhere in it: letters, pieces, slices that are taken out, doubled or moved. */
function mutated(text: string, random: () => number): string {
  let now = text;
  const upTo = (count: number): number => Math.floor(random() * count);
  for (let change = upTo(4); change >= 0; change -= 1) {
    const at = upTo(now.length + 1);
    const slice = now.slice(at, at + upTo(40));
    const rest = now.slice(at + slice.length);
    const kind = upTo(6);
    const letter = String.fromCharCode(upTo(random() < 0.9 ? 128 : 65_536));
    const put = [letter, pieces[upTo(pieces.length)] ?? "", "", slice + slice, slice, ""][kind] ?? "";
    if (kind === 4) now = put + now.slice(0, at) + rest;
    else now = now.slice(0, at) + put + (kind < 2 ? now.slice(at + upTo(2)) : rest);
  }
  return now;
}

const wiring = JSON.stringify({
  version: 1,
  stations: [
    { id: "way-1", kind: "way", label: "Ring", settings: { deviceRatingA: 32, deviceCurve: "B" } },
    { id: "socket-1", kind: "socket-outlet", label: "Kitchen" },
  ],
  cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5, lengthM: 7 }],
});
interface Reader {
  what: string;
  text: string;
  /** Of a hundred mutants so many are of this kind. */
  share: number;
  read: (text: string, name: string) => Read<unknown>;
}
const readers: Reader[] = [
  { what: "wiring", text: wiring, share: 36, read: readWiring },
  { what: "board", text: readFileSync("hardware/boards/small.json", "utf8"), share: 2, read: readBoard },
  { what: "scenario", text: readFileSync("scenarios/first-spur.json", "utf8"), share: 2, read: readScenario },
];
const messages = Object.entries(actSamples).map(([name, message]) => ({
  name: name as ActName,
  text: JSON.stringify(message),
}));

/** Reads a mutant of a file; true where it was refused, and then by the file's name. */
function isFileRefused({ what, text, read }: Reader, random: () => number): boolean {
  const found = read(mutated(text, random), `${what}.json`);
  if (found.ok) return false;
  expect(found.problems[0]?.file).toBe(`${what}.json`);
  return true;
}

function isMessageRefused(random: () => number): boolean {
  const { name, text } = messages[Math.floor(random() * messages.length)] ?? { name: "ready", text: "{}" };
  let message: unknown;
  try {
    message = JSON.parse(mutated(text, random));
  } catch {
    return true;
  }
  return !parseSafely<object>(acts[name].schema, message).success;
}

describe("mutated files and messages", () => {
  // 10,000 in a usual run, 1,000,000 at ten times the depth.
  const count = 10_000 * testDepth ** 2;

  it(
    "are refused by name or taken, and nothing is thrown",
    () => {
      const random = seeded(20_261_127);
      const refused: Record<string, number> = {};
      const tried: Record<string, number> = {};
      for (let turn = 0; turn < count; turn += 1) {
        let share = turn % 100;
        const reader = readers.find((one) => (share -= one.share) < 0);
        const what = reader?.what ?? "message";
        tried[what] = (tried[what] ?? 0) + 1;
        if (reader ? isFileRefused(reader, random) : isMessageRefused(random))
          refused[what] = (refused[what] ?? 0) + 1;
      }
      const said = Object.keys(tried).map(
        (what) => `${tried[what]} of a ${what} (${refused[what] ?? 0} refused)`,
      );
      console.log(`mutants: ${count}, nothing thrown: ${said.join(", ")}`);
      expect(Object.values(refused).every((number) => number > 0)).toBe(true);
    },
    60_000 * testDepth ** 2,
  );
});
