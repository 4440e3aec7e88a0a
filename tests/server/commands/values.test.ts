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
    const heading = lines.indexOf("accessory ratings");
    expect(heading).toBeGreaterThan(0);
    expect(lines[heading + 1]).toMatch(
      /^ {2}accessory single socket outlet +13 A +BS 1363-2, .*from memory\)$/,
    );
    expect(lines).not.toContain("copper resistance");
    expect(printed).not.toContain("secondary copy");
    expect(printed).toMatch(/\n\d+ of \d+ values and the clauses of \d+ of \d+ rules are from memory\./);
  });

  it("names the rules whose clause nobody has looked up: a learner's note does not say so", async () => {
    await run([]);
    const named = printed.slice(printed.indexOf("\nrules\n"));
    expect(named).toMatch(/\n {2}isolation {2}BS 7671:2018, 462\.2 and 537\.2 \(regulation, from memory\)\n/);
    expect(named).not.toMatch(/\n {2}ring-cable /);
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
