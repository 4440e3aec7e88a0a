import { deadSteps } from "../../shared/protocol/attempt-words.ts";
import type { AttemptView, DeadView } from "../../shared/protocol/bench-view.ts";
import { circuitChart } from "../attempt/circuit-chart.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { breakers } from "../attempt/make-dead.ts";
import { isMadeDead } from "../attempt/steps.ts";
import type { AttemptToShow } from "./to-show.ts";

/** The picture of making dead. What an act misses is told where `mayTell`; what the tester shows always is. */
export function deadView({ run }: AttemptToShow, mayTell: boolean): DeadView {
  const { isChartRead, off, locked, reading, missed } = run.state.deadState;
  return {
    breakers: breakers.map((number) => ({
      number,
      isOn: !off.includes(number),
      isLocked: locked.includes(number),
    })),
    ...(isChartRead ? { chart: circuitChart(run.kit.stripped) } : {}),
    reading,
    ...(mayTell && missed !== null ? { missed } : {}),
  };
}

/** The steps of making dead with what counts. */
export const deadList = (state: AttemptState): AttemptView["dead"] =>
  deadSteps.map((step) => ({ step, isDone: isMadeDead(state) || state.deadCounted.includes(step) }));
