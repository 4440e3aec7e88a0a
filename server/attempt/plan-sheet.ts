import type { Fact, PlanView, Said } from "../../shared/protocol/bench-view.ts";
import type { PlanReasonKey } from "../../shared/protocol/said-keys.ts";
import { ringLimits } from "../../shared/trade/ring-limits.ts";
import type { ScenarioKit } from "../library.ts";
import { currentHelp, deviceHelp, fuseHelp, sizeHelp, tabulatedHelp } from "./plan-help.ts";
import type { Answers, PlanItem } from "./plan-item.ts";
import { roundedA } from "./rounded-current.ts";
import { type FuseTask, type PlanTask, planTask } from "./plan-task.ts";

type Bars = NonNullable<PlanView["bars"]>;

/** The design worksheet of a scenario: its questions in the order of the trade. */
export interface PlanSheet {
  questions: PlanItem[];
  isRing: boolean;
  /** The currents to compare for what was answered; of a ring with those of its legs, where they are known. */
  bars: (answers: Answers, legsA: readonly number[]) => Bars;
}

/** A current that was worked out is right within this much: people round on the way. Our own choice. */
const tolerance = { share: 0.03, leastA: 0.25 };
const isNear = (answerA: number, rightA: number): boolean =>
  Math.abs(answerA - rightA) <= Math.max(tolerance.leastA, tolerance.share * rightA);

const said = (key: PlanReasonKey, facts: Record<string, Fact>): Said => ({ key, facts });
const result = (isRight: boolean, key: PlanReasonKey, facts: Record<string, Fact>, relation?: Said) => ({
  isRight,
  reason: said(key, facts),
  ...(relation ? { relation } : {}),
});

const sheets = new WeakMap<ScenarioKit, PlanSheet>();

/** The worksheet of a scenario; made once. */
export function planSheetOf(kit: ScenarioKit): PlanSheet {
  const known = sheets.get(kit);
  if (known) return known;
  const sheet = makeSheet(planTask(kit));
  sheets.set(kit, sheet);
  return sheet;
}

function makeSheet(task: PlanTask): PlanSheet {
  const questions = [
    currentItem(task),
    deviceItem(task),
    tabulatedItem(task),
    sizeItem(task),
    ...fuseItems(task),
  ].flatMap((item) => item ?? []);
  return { questions, isRing: task.isRing, bars: (answers, legsA) => barsOf(task, answers, legsA) };
}

/** The device an answer stands for: the one that was answered where it can be, else the given or the next one. */
const deviceOf = ({ givenDeviceA, devicesA, nextDeviceA }: PlanTask, { deviceRatingA }: Answers) =>
  givenDeviceA ??
  (deviceRatingA !== undefined && devicesA.includes(deviceRatingA) ? deviceRatingA : nextDeviceA);

function currentItem(task: PlanTask): PlanItem | undefined {
  const { designA } = task;
  if (designA === undefined) return undefined;
  const facts = { designCurrentA: roundedA(designA) };
  return {
    question: "designCurrentA",
    mark: (answer) => result(isNear(answer, designA), "plan.reason.designCurrentA", facts),
    help: currentHelp(task),
  };
}

function deviceItem(task: PlanTask): PlanItem | undefined {
  const { designA, devicesA, nextDeviceA } = task;
  if (devicesA.length === 0 || designA === undefined || nextDeviceA === undefined) return undefined;
  const designCurrentA = roundedA(designA);
  return {
    question: "deviceRatingA",
    choices: devicesA,
    mark: (answer) => {
      const isRight = answer >= designA && task.sizesFor(answer).length > 0;
      return result(isRight, "plan.reason.deviceRatingA", { designCurrentA, deviceRatingA: nextDeviceA });
    },
    help: deviceHelp(designCurrentA),
  };
}

function tabulatedItem(task: PlanTask): PlanItem | undefined {
  if (task.isExisting || task.tabulatedFor(task.nextDeviceA) === undefined) return undefined;
  return {
    question: "tabulatedCurrentA",
    mark: (answer, answers) => {
      const rightA = task.tabulatedFor(deviceOf(task, answers)) ?? Number.NaN;
      const facts = { tabulatedCurrentA: roundedA(rightA) };
      return result(isNear(answer, rightA), "plan.reason.tabulatedCurrentA", facts);
    },
    help: tabulatedHelp(task, (answers) => deviceOf(task, answers)),
  };
}

function sizeItem(task: PlanTask): PlanItem | undefined {
  if (task.sizesFor(task.nextDeviceA).length === 0) return undefined;
  return {
    question: "csaMm2",
    choices: task.sizesMm2,
    mark: (answer, answers) => {
      const device = deviceOf(task, answers);
      const right =
        task.sizesFor(device).length > 0 ? task.sizesFor(device) : task.sizesFor(task.nextDeviceA);
      const facts = { csaMm2: right[0] ?? Number.NaN };
      if (answer === right[0]) return result(true, "plan.reason.csaMm2", facts);
      if (right.includes(answer)) return result(true, "plan.reason.size-larger", facts);
      const { leastCsaMm2 } = ringLimits;
      const ofRing = said("plan.reason.size-ring", { leastCsaMm2 });
      const relation = task.isRing && answer < leastCsaMm2 ? ofRing : undefined;
      return result(false, "plan.reason.size-too-small", facts, relation);
    },
    help: sizeHelp(task, (answers) => deviceOf(task, answers)),
  };
}

const fuseQuestions = ["fuseRatingA", "secondFuseRatingA"] as const;

const fuseItems = ({ fuses }: PlanTask): PlanItem[] =>
  fuseQuestions.flatMap((question, i) => {
    const fuse = fuses[i];
    if (!fuse) return [];
    return [
      {
        question,
        station: fuse.station,
        choices: fuse.choicesA,
        mark: (answer) => markFuse(fuse, answer),
        help: fuseHelp(fuse),
      },
    ];
  });

/** What speaks against a fuse is what the rules say: the load behind it, the cable behind it, or what it is for. */
function markFuse({ usualA, against }: FuseTask, answerA: number): ReturnType<PlanItem["mark"]> {
  const found = against(answerA);
  const facts = { fuseRatingA: usualA };
  if (!found)
    return result(true, answerA > usualA ? "plan.reason.fuse-larger" : "plan.reason.fuseRatingA", facts);
  const { designA } = found.facts;
  const relation =
    found.rule === "fused-load" && typeof designA === "number"
      ? said("plan.reason.fuse-below-load", { answerA, loadA: roundedA(designA) })
      : found.rule === "fused-cable"
        ? said("plan.reason.fuse-above-cable", { answerA })
        : undefined;
  return result(false, "plan.reason.fuseRatingA", facts, relation);
}

/** Ib, In and Iz of what was answered; of a ring its legs against Iz, and Iz against the 20 A its cable must carry. */
function barsOf(task: PlanTask, answers: Answers, legsA: readonly number[]): Bars {
  const bars: Bars = [];
  const add = (name: Bars[number]["name"], currentA: number | undefined): void => {
    if (currentA !== undefined) bars.push({ name, currentA: roundedA(currentA) });
  };
  const deviceA = deviceOf(task, answers);
  const installedA = answers.csaMm2 === undefined ? undefined : task.installedFor(answers.csaMm2);
  if (task.isRing) {
    for (const legA of legsA) add("leg", legA);
    add("Iz", installedA);
    add("least", ringLimits.leastCapacityA);
  } else {
    add("Ib", answers.designCurrentA ?? task.designA);
    add("In", deviceA);
    add("Iz", installedA);
  }
  return bars.length > 1 ? bars : [];
}
