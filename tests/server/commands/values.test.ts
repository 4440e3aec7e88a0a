import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { run } from "../../../server/commands/values.ts";

let printed = "";
beforeEach(() => {
  printed = "";
  const keep = (line?: unknown) => void (printed += `${String(line)}\n`);
  vi.spyOn(console, "log").mockImplementation(keep);
  vi.spyOn(console, "error").mockImplementation(keep);
});
afterEach(() => {
  vi.restoreAllMocks();
});

describe("the list of values from memory", () => {
  it("groups them by table and leaves out what was checked", async () => {
    expect(await run([])).toBe(0);
    const lines = printed.split("\n");
    const heading = lines.indexOf("grouping factors");
    expect(heading).toBeGreaterThan(0);
    expect(lines[heading + 1]).toMatch(/^ {2}circuits 3 +0\.7 +BS 7671:2018, Table 4C1 .*from memory\)$/);
    expect(lines).not.toContain("copper resistance");
    expect(printed).not.toContain("secondary copy");
    expect(printed).toMatch(/\n\d+ of \d+ values are from memory\./);
  });

  it("is the list of all values when asked for", async () => {
    expect(await run(["--all"])).toBe(0);
    expect(printed).toMatch(/\ncopper resistance\n/);
    expect(printed).toContain("common practice, no source");
    expect(printed).toContain("secondary copy");
  });

  it("refuses a word it does not know and says what it takes", async () => {
    expect(await run(["--some"])).toBe(2);
    expect(printed).toContain('"--some" is not known');
  });
});
