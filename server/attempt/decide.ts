import type { CableId, StationId } from "../../shared/board/ids.ts";
import type { BenchCommand } from "../../shared/protocol/commands.schema.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import type { Text } from "../../shared/text/text.schema.ts";
import { refuse, type Refusal } from "../refusal.ts";
import type { Plugged } from "../sensed/joins.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import type { AttemptState } from "./attempt-state.ts";
import { breakerOfTask } from "./circuit-chart.ts";
import { deadRefusal } from "./make-dead.ts";
import { mayWire, mayWork } from "./may-wire.ts";
import { choicesOf } from "./settings.ts";
import { isStepOpen, stepsOf } from "./steps.ts";

/** What a command of an attempt is decided on. */
export interface Situation {
  state: AttemptState;
  scenario: StrippedScenario;
  /** The board as it is sensed now. */
  plugged: Plugged;
  /** The cables that are in now. */
  cables: readonly CableId[];
  planQuestions: readonly string[];
  /** Judges the board as it is now. */
  judged: () => { verdict: Verdict; wiringHash: string };
  /** The text of hint 1, 2 or 3 for the board as it is now. */
  hint: (number: number) => Text;
}

export type Decision = { ok: true; events: AttemptEvent[] } | Refusal;

const events = (...made: AttemptEvent[]): Decision => ({ ok: true, events: made });
const hintCount = 3;

/** The commands that only add to the record of an attempt, each with what it turns into or why not. */
const deciders = {
  "accept-caution": ({ state }) =>
    state.step === "caution" ? events({ type: "caution-accepted", content: {} }) : events(),

  "go-to-step": ({ state }, { step }) => {
    if (step === state.step) return events();
    // To look at a step is not to work on: who is ready for check stays so.
    const waiting = state.status === "ready" ? { isWaiting: true as const } : {};
    if (isStepOpen(state, step)) return events({ type: "step-entered", content: { step, ...waiting } });
    if (state.step === "caution") return refuse("caution-first");
    if (step === "load") return refuse("tests-first");
    return stepsOf(state).includes(step) ? refuse("make-dead-first") : refuse("locked");
  },

  "dead-act": ({ state, scenario }, act) => {
    const refused = mayMakeDead(state);
    if (refused) return refused;
    const why = deadRefusal(state.deadPicture, act);
    if (why) return refuse(why);
    return events({ type: "dead-acted", content: { act, breaker: breakerOfTask(scenario) } });
  },

  "declare-dead": ({ state }) => {
    const refused = mayMakeDead(state);
    if (refused) return refused;
    // Where the bench keeps the list, the list says when it is dead.
    if (state.mode !== "assessed") return refuse("make-dead-first");
    return events(
      { type: "dead-declared", content: {} },
      { type: "step-entered", content: { step: "plan" } },
    );
  },

  "answer-plan": ({ state, planQuestions }, content) => {
    if (state.step === "caution") return refuse("caution-first");
    if (!planQuestions.includes(content.question)) return refuse("not-a-question");
    if (state.status === "ready") return refuse("frozen");
    return events({ type: "plan-answered", content });
  },

  declare: (situation, { subject, key, value }) => {
    const refused = mayWire(situation.state);
    if (refused) return refused;
    if (!isChoice(situation, subject, key, value)) return refuse("not-a-choice");
    return events({ type: "setting", content: { subject, key, value, by: "learner" } });
  },

  "ask-verdict": ({ state, judged }) => {
    const refused = mayWire(state);
    if (refused) return refused;
    if (state.mode === "assessed") return refuse("not-in-assessed");
    const { verdict, wiringHash } = judged();
    // Asking twice about the same board is not a second try.
    const isTry = state.asked?.wiringHash !== wiringHash;
    return events({ type: "verdict-asked", content: { isTry, wiringHash, verdict } });
  },

  "ask-hint": ({ state, hint }) => {
    if (state.mode === "assessed") return refuse("no-hints-assessed");
    const refused = mayWire(state);
    if (refused) return refused;
    const number = state.hints.length + 1;
    if (number > hintCount) return refuse("no-hints");
    return events({ type: "hint-given", content: { number, text: hint(number) } });
  },

  // A reading is what the simulated meter shows; there is none to record before the meter is asked.
  "record-reading": () => refuse("no-reading"),

  ready: ({ state, plugged, judged }) => {
    const refused = mayWire(state);
    return refused ?? events({ type: "ready", content: { full: plugged, ...judged() } });
  },

  "take-back": ({ state }) =>
    state.status === "ready" ? events({ type: "ready-ended", content: { reason: "taken-back" } }) : events(),

  "hand-in": ({ state, plugged, judged }) => {
    const refused = state.status === "ready" ? undefined : mayWire(state);
    if (refused) return refused;
    const content = { full: plugged, ...judged(), tryCount: state.tryCount };
    return events({ type: "handed-in", content });
  },
} satisfies { [Name in DecidedName]: (situation: Situation, command: BenchCommand<Name>) => Decision };

type DecidedName =
  | "accept-caution"
  | "go-to-step"
  | "dead-act"
  | "declare-dead"
  | "answer-plan"
  | "declare"
  | "ask-verdict"
  | "ask-hint"
  | "record-reading"
  | "ready"
  | "take-back"
  | "hand-in";

/** Turns a command into events, or says why not. Pure: the same situation and command give the same decision. */
export function decide<Name extends DecidedName>(
  situation: Situation,
  name: Name,
  command: BenchCommand<Name>,
): Decision {
  const refused = mayWork(situation.state);
  if (refused) return refused;
  const decider = deciders[name] as (situation: Situation, command: BenchCommand<Name>) => Decision;
  return decider(situation, command);
}

function mayMakeDead(state: AttemptState): Refusal | undefined {
  if (state.step === "caution") return refuse("caution-first");
  if (!state.isExistingCircuit) return refuse("locked");
  return state.status === "ready" ? refuse("frozen") : undefined;
}

function isChoice(
  { scenario, cables }: Situation,
  subject: CableId | StationId,
  key: BenchCommand<"declare">["key"],
  value: BenchCommand<"declare">["value"],
): boolean {
  const isOffered = choicesOf(scenario, key).includes(value);
  if (key === "csaMm2") return isOffered && cables.some((cable) => cable === subject);
  const station = scenario.stations.find(({ id }) => id === subject);
  return isOffered && (station?.chosen?.includes(key) ?? false);
}
