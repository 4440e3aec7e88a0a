import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readBoardFile } from "../../../server/library.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { hasRoomFor } from "../../../shared/scenario/answer-misses.ts";
import { type Change, changed, inOrder } from "../../../shared/scenario/change.ts";
import { fitsBoard } from "../../../shared/scenario/fits-board.ts";
import { leastChange } from "../../../shared/scenario/least-change.ts";
import { possibleChanges } from "../../../shared/scenario/possible-changes.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { wordChange } from "../../../shared/scenario/word-change.ts";
import { languages } from "../../../shared/text/languages.ts";
import { someOf } from "../../breadth.ts";
import { testDepth } from "../../depth.ts";
import { newSeed } from "../../new-seed.ts";
import { seeded } from "../../seeded.ts";

const boards = ["small", "workshop", "lighting"].map(
  (id) => readBoardFile(`hardware/boards/${id}.json`).board,
);
type Board = (typeof boards)[number];
const scenarios = readdirSync("scenarios")
  .filter((file) => file.endsWith(".json"))
  .flatMap((file) => {
    const read = readScenario(readFileSync(`scenarios/${file}`, "utf8"), file);
    return read.ok ? [read.value] : [];
  });

/** Only what is wired can be changed: no reading that was taken wrongly, and no fault that was not found. */
const isAboutWiring = ({ hiddenFaults, drawnFaults }: Scenario, { readings }: Built): boolean =>
  hiddenFaults === undefined && drawnFaults === undefined && readings === undefined;

const everyCase = scenarios.flatMap((scenario) =>
  boards
    .filter((board) => fitsBoard(scenario, board))
    .flatMap((board) =>
      scenario.wrongAnswers
        .filter(({ built }) => hasRoomFor(built, scenario, board) && isAboutWiring(scenario, built))
        .map(({ name, built }) => ({
          task: scenario.id,
          answer: name,
          on: board.id,
          scenario,
          board,
          built,
        })),
    ),
);

const cases = someOf(everyCase, 3);

const verdictAfter = (scenario: Scenario, board: Board, built: Built, changes: readonly Change[]): Verdict =>
  judge(toWiring({ scenario, board, built: changed(built, changes) }));

const isRight = ({ proposal, findings }: Verdict): boolean =>
  proposal === "met" && !findings.some(({ weight }) => weight === "danger" || weight === "fix");

interface Found {
  changes: Change[];
  askedCount: number;
}
const known = new Map<(typeof cases)[number], Found>();

/** The least change of a case and how many verdicts were asked for, looked for once. */
function foundOf(one: (typeof cases)[number]): Found {
  const before = known.get(one);
  if (before) return before;
  const { scenario, board, built } = one;
  let askedCount = 0;
  const counting = (wiring: Parameters<typeof judge>[0]) => {
    askedCount += 1;
    return judge(wiring);
  };
  const changes = leastChange({ scenario, board, built, judge: counting }) ?? [];
  known.set(one, { changes, askedCount });
  return { changes, askedCount };
}

describe("the least change of a wrong answer", () => {
  it.each(cases)("puts all right, and nothing of it can be left out: $task, $answer, on $on", (one) => {
    const { scenario, board, built } = one;
    const { changes } = foundOf(one);
    const after = (some: readonly Change[]) => verdictAfter(scenario, board, built, some);
    expect(isRight(after(changes))).toBe(true);
    for (const change of changes)
      expect(isRight(after(changes.filter((other) => other !== change))), JSON.stringify(change)).toBe(false);
  });

  it("asks for no more than 80 verdicts, so that it is there before a learner waits for it", () => {
    expect(Math.max(...cases.map((one) => foundOf(one).askedCount))).toBeLessThanOrEqual(80);
  });

  it("is of every kind somewhere in the tasks, and each of its things is said in every language", () => {
    const kinds = new Set(cases.flatMap((one) => foundOf(one).changes.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(["plug", "pull", "set", "size"]);
    for (const one of cases) {
      const wiring = toWiring(one);
      for (const change of foundOf(one).changes) {
        const said = languages.map((language) => wordChange(change, wiring, language));
        expect(new Set(said).size).toBe(languages.length);
        for (const sentence of said) expect(sentence).toMatch(/^\p{Lu}.*[^ ]\.$/u);
      }
    }
  });
});

describe("what a learner could do next", () => {
  it("is to choose any setting that a task leaves to them, the rating of an accessory too", () => {
    const shower = scenarios.find(({ id }) => id === "shower");
    const board = boards.find(({ id }) => id === "workshop");
    if (!shower || !board) throw new Error("no shower");
    const stations = shower.stations.map((station) =>
      station.kind === "isolator" ? { ...station, chosen: ["ratingA" as const] } : station,
    );
    const [built] = shower.modelAnswers;
    if (!built) throw new Error("no answer");
    const changes = possibleChanges({ scenario: { ...shower, stations }, board, built });
    const ratings = changes.flatMap((one) =>
      one.kind === "set" && one.key === "ratingA" ? [one.value] : [],
    );
    expect(ratings).toContain(50);
  });
});

describe("the least change on the small board", () => {
  const [board] = boards;
  const small = scenarios.filter((scenario) => board && fitsBoard(scenario, board));

  /** True where some set of so many changes puts all right, every one tried. */
  function isThereOf(scenario: Scenario, built: Built, count: number): boolean {
    if (!board) throw new Error("no board");
    if (count === 0) return isRight(verdictAfter(scenario, board, built, []));
    return possibleChanges({ scenario, board, built }).some((change) =>
      isThereOf(scenario, changed(built, [change]), count - 1),
    );
  }

  it.each([20_261_127, newSeed])(
    "is the smallest there is, for right answers that were spoiled at random by seed %i",
    (seed) => {
      const random = seeded(seed);
      const any = <T>(from: readonly T[]): T | undefined => from[Math.floor(random() * from.length)];
      const tally = new Map<number, number>();
      for (let turn = 0; turn < 12 * testDepth; turn += 1) {
        const scenario = any(small);
        const model = scenario && any(scenario.modelAnswers);
        if (!board || !scenario || !model) throw new Error("no task for the small board");
        let built: Built = model;
        for (let spoil = 0; spoil <= turn % 2; spoil += 1) {
          const change = any(possibleChanges({ scenario, board, built }));
          if (change) built = changed(built, inOrder([change]));
        }
        const changes = leastChange({ scenario, board, built, judge });
        expect(changes, JSON.stringify(built)).toBeDefined();
        const count = changes?.length ?? 0;
        tally.set(count, (tally.get(count) ?? 0) + 1);
        for (let fewer = 0; fewer < count; fewer += 1)
          expect(isThereOf(scenario, built, fewer), JSON.stringify({ built, changes })).toBe(false);
      }
      console.log(`least changes proved smallest: ${JSON.stringify(Object.fromEntries(tally))}`);
      expect(Math.max(...tally.keys())).toBeGreaterThan(0);
    },
  );
});
