import { runCables } from "../../shared/electrical/cable-heating.ts";
import { acceptedZone } from "../../shared/electrical/accepted-zone.ts";
import type { LoadRun } from "../../shared/electrical/load-run.ts";
import type { HeatView, LoadFacts, LoadView } from "../../shared/protocol/load-view.ts";
import { loadRunEveryS } from "../../shared/protocol/load-words.ts";
import { conductorTemperature } from "../../shared/trade/conductor-temperature.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { type CircuitUnderTest, circuitUnderTest, testTaskOf } from "../attempt/circuit-under-test.ts";
import { appliancesOf } from "../attempt/load-appliances.ts";
import { loadRunOf, reliedOnA } from "../attempt/load-run-of.ts";
import { appliancesOn, loadAtRest } from "../attempt/load-state.ts";

const tenths = (value: number): number => Math.round(value * 10) / 10;
/** What a cable may carry is never rounded up. */
const tenthsDown = (value: number): number => Math.floor(value * 10 + 1e-9) / 10;

/**
 * The circuit under load as its learner's screen shows it. Currents, and whether a device is open, are theirs to see;
 * what a cable may carry, how warm it gets and what acts first are judgements, in practice alone.
 */
export function loadView(attempt: AttemptRun): LoadView {
  const { state, kit } = attempt;
  const task = testTaskOf(kit);
  const circuit = circuitUnderTest(attempt);
  const isLive = state.meter.supply === "holds";
  const load = isLive ? state.load : loadAtRest;
  const on = appliancesOn(load);
  const isPractice = state.mode !== "assessed";
  const view: LoadView = {
    way: task.way,
    isLive,
    nowS: load.nowS,
    appliances: appliancesOf(kit.stripped).map((appliance) => ({ ...appliance, isOn: on.has(appliance.id) })),
    cables: [],
    devices: [],
    legs: [],
  };
  if (!isLive) return view;
  const run = loadRunOf(task, circuit, load.programme);
  const at = Math.min(run.timeS.length - 1, Math.floor(load.nowS / loadRunEveryS));
  view.cables = run.cables.map(({ cable, ratingA, currentA }) => ({
    id: cable,
    currentA: tenths(currentA[at]!),
    ...(isPractice && ratingA !== undefined ? { ratingA: tenthsDown(ratingA) } : {}),
  }));
  view.devices = run.devices.map(({ station, ratingA, currentA, mayBeOpen, mustBeOpen }) => ({
    station,
    currentA: tenths(currentA[at]!),
    ...(ratingA === undefined ? {} : { ratingA }),
    state: mustBeOpen[at] ? "open" : isPractice && mayBeOpen[at] ? "may-be-open" : "closed",
  }));
  view.legs = run.rings
    .filter(({ way }) => way === task.way)
    .map(({ ends, legA, firstShare }) => ({
      ends,
      currentA: [tenths(legA[0][at]!), tenths(legA[1][at]!)],
      firstPercent: Math.round(firstShare[at]! * 100),
    }));
  if (!isPractice) return view;
  const heat = heatOf(circuit, run, state.load.cable);
  return { ...view, ...(heat ? { heat } : {}), facts: factsOf(run) };
}

/** How warm a cable gets: the one that is looked at, else the warmest. */
function heatOf(
  circuit: CircuitUnderTest,
  run: LoadRun,
  chosen: HeatView["cable"] | null,
): HeatView | undefined {
  const isDrawn = (id: HeatView["cable"] | null | undefined) =>
    run.cables.find(({ cable, earlyC }) => cable === id && earlyC.length > 0);
  const series = isDrawn(chosen) ?? isDrawn(run.facts.hottest?.cable);
  const cable = runCables(circuit.built, circuit.wiring.cables).find(({ id }) => id === series?.cable);
  if (!series || !cable?.heat || cable.ratingA === undefined) return undefined;
  const deviceA = Math.min(reliedOnA(circuit).get(cable.id) ?? cable.ratingA, cable.ratingA);
  const { fromC, toC, forS } = acceptedZone(cable.heat, deviceA, cable.ambientC);
  return {
    cable: cable.id,
    earlyC: series.earlyC.map(tenths),
    lateC: series.lateC.map(tenths),
    longLifeC: conductorTemperature.longLifeC,
    faultLimitC: conductorTemperature.faultLimitC,
    zone: { fromC, toC: tenths(toC), forS },
  };
}

function factsOf({ facts }: LoadRun): LoadFacts {
  const { first, hottest, untimed, events } = facts;
  const over70 = events.find(({ kind, id }) => kind === "long-life" && id === hottest?.cable);
  const isTooHot = hottest?.state === "beyond" || hottest?.state === "fault";
  return {
    ...(first ? { first } : {}),
    ...(hottest
      ? { hottest: { ...hottest, earlyC: tenths(hottest.earlyC), lateC: tenths(hottest.lateC) } }
      : {}),
    ...(over70 ? { over70S: over70.earliestS } : {}),
    isUnprotected: isTooHot && first?.latestS === undefined,
    untimed,
  };
}
