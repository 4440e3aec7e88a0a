import { deadSteps } from "../../shared/protocol/attempt-words.ts";
import type { AttemptView, DeadView } from "../../shared/protocol/bench-view.ts";
import { breakerOfTask, circuitChart } from "../attempt/circuit-chart.ts";
import { breakers, countedSteps, type DeadState, withWay } from "../attempt/make-dead.ts";
import { isMadeDead } from "../attempt/steps.ts";
import type { AttemptToShow } from "./to-show.ts";

/** The picture of making dead. What an act misses is told where `mayTell`; what the tester shows always is. */
export function deadView({ run }: AttemptToShow, mayTell: boolean): DeadView {
  const { isChartRead, off, locked, reading, missed } = pictureNow(run);
  return {
    breakers: breakers.map((number) => ({
      number,
      isOn: !off.includes(number),
      isLocked: locked.includes(number),
    })),
    ...(isChartRead ? { chart: circuitChart(run.kit.stripped) } : {}),
    reading,
    then: run.state.hasBeenLive ? "test" : "plan",
    ...(mayTell && missed !== null ? { missed } : {}),
  };
}

/** The steps of making dead with what counts. */
export function deadList({ run }: AttemptToShow): AttemptView["dead"] {
  const { state } = run;
  const counted = state.hasBeenLive
    ? countedSteps(pictureNow(run), breakerOfTask(run.kit.stripped))
    : state.deadCounted;
  return deadSteps.map((step) => ({ step, isDone: isMadeDead(state) || counted.includes(step) }));
}

/** Once the way was on, its breaker on the picture is as the way was left. */
const pictureNow = ({ state, kit }: AttemptToShow["run"]): DeadState =>
  state.hasBeenLive
    ? withWay(state.deadState, breakerOfTask(kit.stripped), state.meter.supply !== "holds")
    : state.deadState;
