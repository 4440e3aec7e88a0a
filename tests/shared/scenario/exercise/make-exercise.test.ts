import { describe, expect, it } from "vitest";
import { checkScenario } from "../../../../server/commands/check-scenarios.ts";
import { readBoardFile } from "../../../../server/library.ts";
import { judge } from "../../../../shared/rules/judge.ts";
import {
  exerciseId,
  exerciseLevels,
  exerciseOrder,
  exerciseTopics,
} from "../../../../shared/scenario/exercise/exercise-words.ts";
import { exerciseNeeds, makeExercise } from "../../../../shared/scenario/exercise/make-exercise.ts";
import { fitsBoard } from "../../../../shared/scenario/fits-board.ts";
import { readScenario } from "../../../../shared/scenario/read-scenario.ts";
import type { Scenario } from "../../../../shared/scenario/scenario.schema.ts";
import { languages } from "../../../../shared/text/languages.ts";
import { isWhole } from "../../../breadth.ts";
import { testDepth } from "../../../depth.ts";
import { newSeed } from "../../../new-seed.ts";
import { seeded } from "../../../seeded.ts";
import { rulesNear } from "./rules-near.ts";

const boards = ["small", "workshop", "lighting"].map(
  (id) => readBoardFile(`hardware/boards/${id}.json`).board,
);
const kinds = exerciseTopics.flatMap((topic) => exerciseLevels.map((level) => ({ topic, level })));
type Kind = (typeof kinds)[number];

/** Of each topic and level: few, more where the run is whole, more than a thousand in all at ten times the depth. */
const perKind = testDepth > 1 ? Math.ceil(11.2 * testDepth) : isWhole ? 4 : 2;
const random = seeded(newSeed);
const seeds = [0, 2 ** 32 - 1, ...Array.from({ length: perKind - 2 }, () => Math.floor(random() * 2 ** 32))];

const made = (kind: Kind, seed: number): Scenario => {
  const scenario = makeExercise({ ...kind, seed }, judge);
  if (!scenario) throw new Error(`no exercise of ${JSON.stringify({ ...kind, seed })}`);
  return scenario;
};

describe.each(kinds)("exercises of $topic, level $level", (kind) => {
  const all = seeds.map((seed) => made(kind, seed));

  it("are scenarios that pass the checks of the shipped ones: the answer is right, and each wrong one is wrong as stated", () => {
    for (const scenario of all) {
      const read = readScenario(JSON.stringify(scenario), scenario.id);
      expect(read.ok ? [] : read.problems, scenario.id).toEqual([]);
      const { misses, passed } = checkScenario(scenario, boards, judge);
      expect(misses, scenario.id).toEqual([]);
      expect(passed).toHaveLength(1);
    }
  });

  it("are the same for the same seed, and others for others", () => {
    for (const [at, seed] of seeds.slice(0, 2).entries()) expect(made(kind, seed)).toEqual(all[at]);
    expect(new Set(all.map(({ plan, place }) => JSON.stringify([plan, place]))).size).toBe(all.length);
  });

  it("demand the same: one move away from the answer as many rules can be broken, give or take one", () => {
    const counts = all.map((scenario) => rulesNear(scenario, judge).size);
    expect(Math.max(...counts) - Math.min(...counts), String(counts)).toBeLessThanOrEqual(2);
    expect(Math.min(...counts)).toBeGreaterThan(2);
  });

  it("name every station that the task is about in the task's text, in every language, and no gap is left", () => {
    for (const { task, requirements, stations } of all) {
      const asked = requirements.flatMap((one) =>
        one.kind === "one-circuit" || one.kind === "unfused-spur" ? one.stations : [],
      );
      const asFound = requirements.some(({ kind }) => kind === "kept");
      const isNew = ({ id }: { id: string }): boolean => !asFound || !/^socket/.test(id);
      for (const language of languages) {
        expect(task[language]).not.toMatch(/[{}[\]]|undefined/);
        for (const station of stations.filter((one) => asked.includes(one.id) && isNew(one)))
          expect(task[language]).toMatch(new RegExp(`\\b${/\d+$/.exec(station.id)?.[0]}\\b`));
      }
      expect(task.en).not.toBe(task.pl);
    }
  });

  it("need no more than the workshop board has", () => {
    const [, workshop] = boards;
    expect(workshop && fitsBoard(exerciseNeeds(kind), workshop)).toBe(true);
  });
});

describe("what an exercise demands", () => {
  it("rises from level to level or stays, and never falls", () => {
    for (const topic of exerciseTopics) {
      const [first = 0, second = 0, third = 0] = exerciseLevels.map(
        (level) => rulesNear(made({ topic, level }, 7), judge).size,
      );
      expect(second).toBeGreaterThanOrEqual(first);
      expect(third).toBeGreaterThanOrEqual(second - 1);
    }
  });
});

describe("the id of an exercise", () => {
  it("tells what it was made from, and no other id does", () => {
    for (const kind of kinds)
      for (const seed of seeds)
        expect(exerciseOrder(exerciseId({ ...kind, seed }))).toEqual({ ...kind, seed });
    for (const id of [
      "first-spur",
      "exercise-ring-4-1",
      "exercise-lamp-1-1",
      "exercise-ring-1-",
      "exercise-ring-1-A",
    ])
      expect(exerciseOrder(id)).toBeUndefined();
  });
});
