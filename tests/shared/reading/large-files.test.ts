import { describe, expect, it } from "vitest";
import { nearestName } from "../../../shared/reading/nearest-name.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";

const station = (index: number) => ({ id: `socket-${index}`, kind: "socket-outlet", label: "Socket" });
const lettersIn = (value: unknown): number => JSON.stringify(value).length;

describe("a file that is far too large or wrong in a thousand places", () => {
  it.each([
    {
      what: "a field name of 7 MB",
      file: { version: 1, stations: [], cables: [], ["x".repeat(7_000_000)]: 1 },
    },
    {
      what: "4,000 cables to stations that are not there, among 4,000 that are",
      file: {
        version: 1,
        stations: Array.from({ length: 4000 }, (_, index) => station(index)),
        cables: Array.from({ length: 4000 }, (_, index) => ({
          from: `sokcet-${index}.a`,
          to: `sokcet-${index + 1}.b`,
          csaMm2: 2.5,
          lengthM: 1,
        })),
      },
    },
    {
      what: "a million values",
      file: { version: 1, stations: Array.from({ length: 1_000_000 }, () => 1), cables: [] },
    },
    {
      what: "90,000 values of the wrong kind",
      file: { version: 1, stations: Array.from({ length: 90_000 }, () => 1), cables: [] },
    },
    { what: "a text of 9 MB", file: { version: 1, stations: [], cables: [], note: "x".repeat(9_000_000) } },
  ])("is refused in a few lines: $what", ({ file }) => {
    const found = readWiring(JSON.stringify(file), "large.json");
    expect(found.ok).toBe(false);
    const problems = found.ok ? [] : found.problems;
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.length).toBeLessThanOrEqual(51);
    expect(lettersIn(problems)).toBeLessThan(60_000);
    if (problems.length === 51) expect(problems.at(-1)?.message).toContain("the first 50 are named");
  });

  it("is compared with few names, and not at all where the length alone is too far off", () => {
    const names = Array.from({ length: 5000 }, (_, index) => `socket-${index}`);
    let comparedLetters = 0;
    const counting = names.map(
      (name) =>
        ({
          length: name.length,
          startsWith: (start: string) => name.startsWith(start),
          toLowerCase: () => {
            comparedLetters += name.length;
            return name;
          },
        }) as unknown as string,
    );
    nearestName("y".repeat(7_000_000), counting.slice(0, 200));
    const startsOnly = comparedLetters;
    expect(startsOnly).toBeLessThan(200 * 12);
    nearestName("sokcet-77", counting);
    expect(comparedLetters - startsOnly).toBeLessThan(5000 * 12 + 200 * 12);
  });
});
