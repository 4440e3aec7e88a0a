import {
  cableId,
  type ContactId,
  endsOfCable,
  roleClass,
  roleOf,
  stationOf,
} from "../../shared/board/ids.ts";
import type { AttemptView, SensedCable } from "../../shared/protocol/bench-view.ts";
import type { HuntView } from "../../shared/protocol/hunt-view.ts";
import type { LoadView } from "../../shared/protocol/load-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { huntResult } from "../attempt/hunt-result.ts";
import type { HuntState } from "../attempt/hunt-state.ts";
import { asFoundCables, type SizedCable, stationSettings } from "../attempt/settings.ts";
import { exerciseAfter } from "../exercise/exercises.ts";
import { hintLimit } from "../../shared/scenario/hint-limit.ts";
import { ringLegsA } from "../attempt/ring-legs.ts";
import { hasMakeDead, stepStates } from "../attempt/steps.ts";
import type { AttemptToShow } from "./to-show.ts";
import { deadList, deadView } from "./dead-view.ts";
import { resultOf } from "../attempt/plan-help.ts";
import { cableRun } from "./cable-run.ts";
import { cableCarries } from "./cable-carries.ts";
import { cableTable } from "./cable-table.ts";
import { loadView } from "./load-view.ts";
import { planZones } from "./plan-zones.ts";
import { sayFor } from "./say-for.ts";
import { testView } from "./test-view.ts";
import { verdictView } from "./verdict-view.ts";

/** True where the screen may show what is derived from the board. */
const mayDerive = ({ mode }: AttemptState): boolean => mode !== "assessed";

/** Until it is handed in: work that waits to be checked is shown as it was left. */
const isAtWork = ({ status }: AttemptState): boolean => status === "open" || status === "ready";

/** An attempt as its learner's screen shows it. */
export function attemptView(shown: AttemptToShow, language: Language): AttemptView {
  const { run, plan, canUndo, sensed } = shown;
  const { state, kit } = run;
  const { told } = shown;
  const isOpen = mayDerive(state) || told?.outcome !== undefined;
  const unsaved = run.unsavedContacts;
  const load = state.step === "load" && isAtWork(state) ? loadView(run) : undefined;
  const view = {
    id: state.id,
    scenario: kit.stripped,
    mode: state.mode,
    kind: state.kind,
    step: state.step,
    steps: stepStates(state, plan.questions.length),
    status: state.status === "left" ? ("handed-in" as const) : state.status,
    zones: isOpen ? planZones(kit.stripped.plan) : [],
    cables: run.cables.map((cable) => atLoad(cableView(cable, shown, unsaved), load)),
    joints: run.joints.map((joint) => [...joint]),
    unknown: sensed?.unknown ?? [],
    settings: stationSettings(kit.stripped, run.settings),
    asFound: asFoundView(shown),
    canUndo,
    dead: isOpen && hasMakeDead(state) ? deadList(shown) : [],
    ...(hasMakeDead(state) ? { deadState: deadView(shown, isOpen) } : {}),
    plan: planView(shown, isOpen),
    cableTable: cableTable(kit.stripped),
    hints: {
      used: state.hints.length,
      left: isOpen ? hintLimit - state.hints.length : 0,
      shown: isOpen ? [...state.hints] : [],
    },
    tries: isOpen ? state.tryCount : 0,
    ...(state.step === "test" && isAtWork(state) ? { test: testView(shown) } : {}),
    ...(load ? { load } : {}),
    ...(state.hunt ? { hunt: huntView(state.hunt, state.status === "handed-in" && isOpen) } : {}),
    ...(told ? { isOwnWorkDeclared: told.isDeclared } : {}),
    ...(told?.outcome ? { outcome: told.outcome } : {}),
    ...afterwards(run),
    verdict: isOpen ? verdictView(shown, language) : null,
  };
  return { ...view, say: sayFor(shown, view) };
}

/** What whoever practised may go on with. */
function afterwards({ state, kit, board }: AttemptToShow["run"]): Pick<AttemptView, "exerciseAfter"> {
  if (state.mode !== "practice" || state.status !== "handed-in") return {};
  const id = exerciseAfter(kit, board, state.id);
  return id === undefined ? {} : { exerciseAfter: id };
}

/** What is hidden is shown after the hand-in, to who practises. */
function huntView(hunt: HuntState, isOver: boolean): HuntView {
  return {
    faultCount: hunt.faults.length,
    named: hunt.named.map(({ name }) => name),
    ...(isOver ? { result: huntResult(hunt) } : {}),
  };
}

/** At the step Load the plan shows what a cable may carry against what it carries then. */
function atLoad(cable: SensedCable, load: LoadView | undefined): SensedCable {
  const now = load?.cables.find(({ id }) => id === cable.id);
  if (!load) return cable;
  const { carries: _carries, ...rest } = cable;
  if (now?.ratingA === undefined) return rest;
  const { ratingA, currentA } = now;
  return { ...rest, carries: { ratingA, neededA: currentA, isBelow: ratingA < currentA } };
}

function cableView(cable: SizedCable, { run }: AttemptToShow, unsaved: ReadonlySet<ContactId>): SensedCable {
  const { state, kit } = run;
  const [from, to] = endsOfCable(cable.id);
  const route = kit.routeBetween(stationOf(from), stationOf(to));
  const offeredCsaMm2 = state.lastCsaMm2.get(cable.id);
  const figures = mayDerive(state) ? run.judged().verdict.figures.cables[cable.id] : undefined;
  return {
    id: cable.id,
    from,
    to,
    conductors: cable.conductors.map(([a, b]) => ({ from: a, to: b, class: roleClass(roleOf(a)) })),
    path: route?.pathPoints.map(({ x, y }) => ({ x, y })) ?? [],
    ...(cable.csaMm2 === undefined
      ? { asksSize: offeredCsaMm2 === undefined ? {} : { offeredCsaMm2 } }
      : { csaMm2: cable.csaMm2 }),
    ...(figures?.lengthM === undefined ? {} : { lengthM: figures.lengthM }),
    ...(figures?.share === undefined ? {} : { share: figures.share }),
    ...(figures ? cableCarries(figures) : {}),
    ...(mayDerive(state) && route ? { run: cableRun(route) } : {}),
    ...(cable.conductors.flat().some((contact) => unsaved.has(contact)) ? { isUnsaved: true } : {}),
    ...(mayDerive(state) && cable.isAsFound ? { isAsFound: true } : {}),
  };
}

/** What was found there, with what of it is in: all the time in practice, until the work begins in assessed work. */
function asFoundView({ run }: AttemptToShow): AttemptView["asFound"] {
  const { state, kit, cables } = run;
  if (!mayDerive(state) && state.entered.includes("wire")) return [];
  const isIn = new Set(cables.map(({ id }) => id));
  return [...asFoundCables(kit.stripped).values()].map(({ from, to }) => {
    const cable = cableId(from, to);
    return { cable, isIn: isIn.has(cable) };
  });
}

function planView({ run, plan }: AttemptToShow, isOpen: boolean): AttemptView["plan"] {
  const answers = run.state.plan;
  const questions = plan.questions.map((item) => {
    const { question, station, choices } = item;
    const answer = answers[question];
    const result = isOpen ? resultOf(item, run.state.planGiven[question] ?? [], answers) : undefined;
    return {
      question,
      ...(station ? { station } : {}),
      ...(choices ? { choices } : {}),
      ...(answer === undefined ? {} : { answer }),
      ...(result ? { result: { isRight: result.isRight, reason: result.reason } } : {}),
    };
  });
  // The fuse of an FCU is not among the bars: they do not wait for it.
  const compared = questions.filter(({ station }) => station === undefined);
  const isAnswered = compared.length > 0 && compared.every(({ answer }) => answer !== undefined);
  if (!isOpen || !isAnswered) return { questions };
  // The legs are worked out for who looks at them, not with every lead that is plugged.
  const legsA = plan.isRing && run.state.step === "plan" ? ringLegsA(run.judged().wiring) : [];
  const bars = plan.bars(answers, legsA);
  if (bars.length === 0) return { questions };
  return { questions, bars, ...(plan.isRing && legsA.length === 0 ? { areLegsLater: true as const } : {}) };
}
