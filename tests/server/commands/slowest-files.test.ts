import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { slowestFiles } from "../../../server/commands/slowest-files.ts";

const vitestFile = (name: string, ...durations: (number | null)[]) => ({
  name: join(process.cwd(), name),
  assertionResults: durations.map((duration) => ({ duration })),
});
const spec = (...durations: number[]) => ({
  tests: [{ results: durations.map((duration) => ({ duration })) }],
});

describe("the slowest files", () => {
  it("stand slowest first, with all their checks, those of nested suites and of a second project too", () => {
    expect(
      slowestFiles(
        [vitestFile("tests/a.test.ts", 400, 700), vitestFile("tests/b.test.ts", 200, null)],
        [
          {
            file: "c.spec.ts",
            specs: [spec(1000)],
            suites: [{ file: "c.spec.ts", specs: [spec(500, 250)] }],
          },
          { file: "c.spec.ts", specs: [spec(300)] },
        ],
      ),
    ).toBe(
      "Checks took 3.4 s in 3 files, one after the other; slowest: " +
        "tests/e2e/c.spec.ts 2.0 s, tests/a.test.ts 1.1 s, tests/b.test.ts 0.2 s",
    );
  });

  it("are no more than asked for", () => {
    const files = Array.from({ length: 12 }, (_, i) => vitestFile(`tests/f${i}.test.ts`, (i + 1) * 1000));
    const line = slowestFiles(files, [], 10);
    expect(line).toContain("tests/f11.test.ts 12.0 s");
    expect(line).not.toContain("tests/f1.test.ts");
  });
});
