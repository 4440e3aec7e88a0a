import { readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { checkScenarioFiles, run } from "../../../server/commands/check-scenarios.ts";
import { solveScenario } from "../../../server/commands/solve-scenario.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { jsonFilesIn } from "../../../server/files/read-file-with.ts";
import { folders } from "../../../server/folders.ts";
import { all, type Change, changed, drop, dropLast, put } from "../../shared/change-file.ts";
import { temporaryFolder } from "../temporary-folder.ts";

const boards = jsonFilesIn(folders.boards);
const scenarios = jsonFilesIn(folders.scenarios);
const firstSpur = join(folders.scenarios, "first-spur.json");

describe("the scenarios that are shipped", () => {
  it("are twenty-two or more", () => {
    expect(scenarios.length).toBeGreaterThanOrEqual(22);
  });

  it.each(scenarios.map((file) => ({ file, name: basename(file) })))(
    "$name gives every answer the verdict it must have, on every board it fits",
    ({ file }) => {
      const { passed, missed, unusable } = checkScenarioFiles([file], boards);
      expect([...unusable, ...missed]).toEqual([]);
      expect(passed).toHaveLength(1);
    },
  );

  it("include one that the small board is enough for", () => {
    const { passed } = checkScenarioFiles([firstSpur], boards);
    expect(passed).toEqual([expect.stringMatching(/ right on (.*, )?small(,|$)/)]);
  });
});

/** The first scenario with one thing changed, in a file of its own. */
const damaged = (change: Change): string => {
  const file = join(temporaryFolder(), "changed.json");
  const good: unknown = JSON.parse(readFileSync(firstSpur, "utf8"));
  writeFileSync(file, JSON.stringify(changed(good, change)));
  return file;
};

async function ran(...args: string[]) {
  const printed: string[] = [];
  const say = (line: string) => void printed.push(line);
  const spies = [
    vi.spyOn(console, "log").mockImplementation(say),
    vi.spyOn(console, "error").mockImplementation(say),
  ];
  onTestFinished(() => spies.forEach((spy) => spy.mockRestore()));
  return { code: await run(args), text: printed.join("\n") };
}

describe("checking scenarios", () => {
  it("misses a scenario that no search solves, and says how many cables one takes that is solved", () => {
    const amiss = "no wiring was found that meets these together: requirements[0] (served)";
    const failed = checkScenarioFiles([firstSpur], boards, judge, () => ({ amiss }));
    expect(failed.passed).toEqual([]);
    expect(failed.missed).toEqual([expect.stringContaining(amiss)]);
    const { passed, missed } = checkScenarioFiles([firstSpur], boards, judge, solveScenario);
    expect(missed).toEqual([]);
    expect(passed).toEqual([expect.stringMatching(/; solved by search with 4 cables/)]);
  });

  it("ends with 0 where all are right", async () => {
    const { code, text } = await ran(firstSpur);
    expect(code).toBe(0);
    expect(text).toContain("1 of 1 scenarios right");
  });

  it.each<{ what: string; change: Change; code: number; says: RegExp }>([
    {
      what: "a model answer that is not right",
      change: put("modelAnswers[0].cables[1].csaMm2", 1.5),
      code: 1,
      says: /modelAnswers\[0\]: expected findings none; found ring-cable\/small \(as written/,
    },
    {
      what: "a wrong answer that gives something else",
      change: put("wrongAnswers[2].findings[0].rule", "spur-on-spur"),
      code: 1,
      says: /wrongAnswers\[2\] \(.*\): expected findings spur-on-spur.*; found spur-cable\/small/,
    },
    {
      what: "a wrong answer that misses another requirement",
      change: put("wrongAnswers[2].notMet", [0]),
      code: 1,
      says: /expected requirements not met: 0; found none/,
    },
    {
      what: "stations that no board has",
      change: put("stations[0].entries.feed", 6),
      code: 1,
      says: /fits none of the boards(.|\n)*"station":"way-1","letter":"f"/,
    },
    {
      what: "a text of which nothing is said to hold it",
      change: drop("asks"),
      code: 1,
      says: /changed\.json: asks: it is missing/,
    },
    {
      what: "a line of the task that no requirement holds",
      change: put("task.en", "Ida moves in.\n1. Build a ring.\n2. Feed 3 with a spur.\n3. Paint the wall."),
      code: 1,
      says: /task\.en: it numbers 1, 2, 3, and asks names 1, 2/,
    },
    {
      what: "a task that numbers nothing in one language",
      change: put("task.pl", "Zbuduj pierścień."),
      code: 1,
      says: /task\.pl: it numbers nothing, and asks names 1, 2/,
    },
    {
      what: "a requirement that no line asks for",
      change: put("asks[1].heldBy", [0, 1]),
      code: 1,
      says: /requirements\[4\]: no line of the task asks for it/,
    },
    {
      what: "numbers that do not count up",
      change: put("asks[1].number", 3),
      code: 1,
      says: /asks: the numbers are 1, 3\. Count 1, 2/,
    },
    {
      what: "no answer that is sound and misses the task",
      change: all(dropLast("wrongAnswers"), dropLast("wrongAnswers")),
      code: 1,
      says: /wrongAnswers: none is sound and misses the task/,
    },
    {
      what: "a sound answer that weaker requirements let pass",
      change: all(
        dropLast("wrongAnswers"),
        put("requirements[4]", { kind: "served", stations: ["socket-3"] }),
      ),
      code: 1,
      says: /wrongAnswers: none is sound and misses the task/,
    },
    {
      what: "an answer that uses what no board has",
      change: put("wrongAnswers[4].built.cables[0].from", "way-1.f"),
      code: 1,
      says: /wrongAnswers\[4\]: no board has all the entries it uses/,
    },
    {
      what: "a file that cannot be used",
      change: put("version", 3),
      code: 2,
      says: /changed\.json: version: 3 is not known here/,
    },
  ])("ends with $code and names the place for $what", async ({ change, code, says }) => {
    const result = await ran(damaged(change));
    expect(result.code).toBe(code);
    expect(result.text).toMatch(says);
    expect(result.text).toContain("0 of 1 scenarios right");
  });

  it("ends with 2 for an option it does not know and a file that is not there", async () => {
    expect(await ran("--all")).toMatchObject({ code: 2 });
    const result = await ran("nowhere.json");
    expect(result.code).toBe(2);
    expect(result.text).toContain("nowhere.json: the whole file: it is not there");
  });
});
