import { afterDeadAct, countedSteps, untouched, withWay } from "./make-dead.ts";
import type { CableId } from "../../shared/board/ids.ts";
import { deadSteps, type Step } from "../../shared/protocol/attempt-words.ts";
import {
  applyChange,
  nothingPlugged,
  type Plugged,
  type PluggedChange,
} from "../../shared/wiring/plugged.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import { type AttemptState, settingName } from "./attempt-state.ts";
import {
  afterNaming,
  afterReading,
  afterRenewal,
  afterSetting,
  afterUnsetting,
  afterShown,
  noHunt,
} from "./hunt-state.ts";
import { afterSwitching, loadAtRest } from "./load-state.ts";
import type { SwitchingOn } from "../../shared/electrical/live-network.ts";
import { afterMeterAct, meterAtRest } from "./meter-state.ts";

const enter = (state: AttemptState, step: Step): AttemptState => ({
  ...state,
  step,
  entered: state.entered.includes(step) ? state.entered : [...state.entered, step],
});

/**
 * The circuit is another: what was read of it has to be read again, and hands that moved its leads have put the way
 * back together, switched off.
 */
const untested = (state: AttemptState): AttemptState => ({
  ...state,
  readings: [],
  liveReadings: [],
  pastReadingCount: state.pastReadingCount + state.readings.length + state.liveReadings.length,
  meter: { ...state.meter, ringEnds: null, link: null, isPressed: false, tripMs: null, supply: "off" },
  load: loadAtRest,
});

function changed(state: AttemptState, change: PluggedChange, full: Plugged | undefined): AttemptState {
  const plugged = full ?? applyChange(state.plugged, change);
  const isIn = new Set(plugged.joins);
  const isOther = change.added.length > 0 || change.removed.length > 0;
  return {
    ...(state.isBegun && isOther ? untested(state) : state),
    plugged,
    // The first state of the board is part of how an attempt begins.
    leftIn: state.isBegun ? state.leftIn.filter((join) => isIn.has(join)) : plugged.joins,
    isBegun: true,
    changeCount: full ? 0 : state.changeCount + 1,
  };
}

function set(
  state: AttemptState,
  content: Extract<AttemptEvent, { type: "setting" }>["content"],
): AttemptState {
  const { subject, key, value, by } = content;
  const declared = new Map(state.declared);
  const name = settingName(subject, key);
  if (value === null) declared.delete(name);
  else if (by === "learner" || by === "trainer") declared.set(name, { subject, key, value, by });
  if (key !== "csaMm2" || typeof value !== "number") return { ...state, declared };
  const isOther = state.lastCsaMm2.get(subject as CableId) !== value;
  return {
    ...(isOther ? untested(state) : state),
    declared,
    lastCsaMm2: new Map(state.lastCsaMm2).set(subject as CableId, value),
  };
}

function deadActed(
  state: AttemptState,
  { act, breaker }: Extract<AttemptEvent, { type: "dead-acted" }>["content"],
): AttemptState {
  const { hasBeenLive, meter } = state;
  if (!hasBeenLive) {
    const deadState = afterDeadAct(state.deadState, act, breaker);
    return { ...state, deadState, deadCounted: countedSteps(deadState, breaker) };
  }
  const before = withWay(state.deadState, breaker, meter.supply !== "holds");
  const deadState = afterDeadAct(before, act, breaker);
  const deadCounted = countedSteps(deadState, breaker);
  const supply = meter.supply === "holds" && deadState.off.includes(breaker) ? "off" : meter.supply;
  const isUnproved = !state.isDeadDeclared && deadCounted.length < deadSteps.length;
  return { ...state, deadState, deadCounted, meter: { ...meter, supply, isUnproved } };
}

/** Switched on, whatever it was proved before. */
const switchedOn = (state: AttemptState, outcome: SwitchingOn): AttemptState => ({
  ...state,
  hasBeenLive: true,
  dead: [],
  deadState: { ...untouched, isChartRead: state.deadState.isChartRead },
  deadCounted: state.deadState.isChartRead ? ["identify"] : [],
  isDeadDeclared: false,
  meter: { ...state.meter, supply: outcome, isPressed: false, tripMs: null, isUnproved: true },
  load: loadAtRest,
});

const notReady = (state: AttemptState): AttemptState => ({ ...state, status: "open", readyWith: null });

const askedOf = ({ verdict, wiringHash }: NonNullable<AttemptState["asked"]>): AttemptState["asked"] => ({
  verdict,
  wiringHash,
});

/** The state of an attempt that has just started; its id is not part of the event but of the row. */
function started(
  id: string,
  content: Extract<AttemptEvent, { type: "attempt-started" }>["content"],
): AttemptState {
  return {
    id,
    scenario: content.scenario,
    scenarioHash: content.scenarioHash,
    learner: content.learner,
    kind: content.kind,
    mode: content.mode,
    isExistingCircuit: content.isExistingCircuit,
    step: "caution",
    entered: ["caution"],
    dead: [],
    deadState: untouched,
    deadCounted: [],
    isDeadDeclared: false,
    hasBeenLive: false,
    plan: {},
    planGiven: {},
    plugged: nothingPlugged,
    leftIn: [],
    isBegun: false,
    changeCount: 0,
    declared: new Map(),
    lastCsaMm2: new Map(),
    readings: [],
    liveReadings: [],
    pastReadingCount: 0,
    hunt: null,
    meter: meterAtRest,
    load: loadAtRest,
    expectedAsked: [],
    hints: [],
    tryCount: 0,
    asked: null,
    status: "open",
    readyWith: null,
    isReadyLost: false,
    isTrainerNeeded: false,
    changedWhileOff: null,
  };
}

/** What an attempt is after an event. Pure; an event before the start changes nothing. */
export function reduce(
  state: AttemptState | undefined,
  id: string,
  event: AttemptEvent,
): AttemptState | undefined {
  if (event.type === "attempt-started") return started(id, event.content);
  if (!state) return undefined;
  switch (event.type) {
    case "caution-accepted":
      return enter(state, state.isExistingCircuit ? "make-dead" : "plan");
    case "step-entered":
      return enter(
        {
          ...(event.content.isWaiting ? state : notReady(state)),
          changedWhileOff: null,
          isReadyLost: false,
        },
        event.content.step,
      );
    case "dead-step": {
      const others = state.dead.filter(({ step }) => step !== event.content.step);
      return { ...state, dead: [...others, event.content] };
    }
    case "dead-acted":
      return deadActed(state, event.content);
    case "dead-declared":
      return { ...state, isDeadDeclared: true, meter: { ...state.meter, isUnproved: false } };
    case "plan-answered": {
      const { question, answer } = event.content;
      const given = [...(state.planGiven[question] ?? []), answer];
      return {
        ...state,
        plan: { ...state.plan, [question]: answer },
        planGiven: { ...state.planGiven, [question]: given },
      };
    }
    case "sensed":
      return changed(state, event.content, event.content.full);
    case "changed-while-off": {
      const { added, removed, full } = event.content;
      return {
        ...changed(state, event.content, full),
        changedWhileOff: { addedCount: added.length, removedCount: removed.length },
      };
    }
    case "setting":
      return set(state, event.content);
    case "verdict-asked":
      return {
        ...state,
        tryCount: state.tryCount + (event.content.isTry ? 1 : 0),
        asked: askedOf(event.content),
        isReadyLost: false,
      };
    case "hint-given":
      return { ...state, hints: [...state.hints, event.content.text] };
    case "meter-acted":
      return { ...state, meter: afterMeterAct(state.meter, event.content) };
    case "reading-recorded":
      return {
        ...state,
        readings: [...state.readings, event.content],
        hunt: state.hunt && afterReading(state.hunt, event.content),
      };
    case "faults-hidden":
      return { ...state, hunt: { ...noHunt, faults: event.content.faults } };
    case "fault-set":
      return { ...state, hunt: afterSetting(state.hunt ?? noHunt, event.content.fault) };
    case "fault-unset":
      return { ...state, hunt: state.hunt && afterUnsetting(state.hunt, event.content.name) };
    case "hidden-fault-ended":
      return { ...state, hunt: state.hunt && afterRenewal(state.hunt, event.content.cable) };
    case "faults-shown":
      return { ...state, hunt: state.hunt && afterShown(state.hunt, event.content.faults) };
    case "fault-named": {
      const { name, isTakenBack = false } = event.content;
      return { ...state, hunt: state.hunt && afterNaming(state.hunt, name, isTakenBack) };
    }
    case "live-reading-recorded":
      return { ...state, liveReadings: [...state.liveReadings, event.content] };
    case "expected-asked": {
      const asked = `${event.content.test} ${event.content.of}`;
      const others = state.expectedAsked.filter((one) => one !== asked);
      return { ...state, expectedAsked: [...others, asked] };
    }
    case "energised":
      return switchedOn(state, event.content.outcome);
    case "switched-off":
      return { ...state, meter: { ...state.meter, supply: "off", isPressed: false, tripMs: null } };
    case "appliance-switched":
      return { ...state, load: afterSwitching(state.load, event.content) };
    case "load-clock-moved":
      return { ...state, load: { ...state.load, nowS: event.content.toS } };
    case "load-run-cleared":
      return { ...state, load: { ...loadAtRest, cable: state.load.cable } };
    case "load-cable-chosen":
      return { ...state, load: { ...state.load, cable: event.content.cable } };
    case "ready":
      return {
        ...state,
        status: "ready",
        readyWith: event.content.full,
        isReadyLost: false,
        plugged: event.content.full,
        changeCount: 0,
      };
    case "ready-ended":
      return { ...notReady(state), isReadyLost: event.content.reason === "board-changed" };
    case "handed-in":
      return {
        ...enter(state, "hand-in"),
        status: "handed-in",
        readyWith: null,
        isReadyLost: false,
        plugged: event.content.full,
        changeCount: 0,
        asked: askedOf(event.content),
      };
    case "resumed":
      return {
        ...state,
        plugged: event.content.full,
        changeCount: 0,
        isTrainerNeeded: event.content.isTrainerNeeded,
      };
    case "resume-confirmed":
      return { ...state, isTrainerNeeded: false };
    case "attempt-left":
      return { ...state, status: "left" };
    case "board-fault":
    case "clock-jumped":
      return state;
  }
}
