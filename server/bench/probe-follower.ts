import { stationOf } from "../../shared/board/ids.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { ProbePoint } from "../../shared/electrical/meter.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { Probe, ProbeTouch } from "../../shared/protocol/test-view.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { workStateOf } from "../attempt/work-state.ts";
import { touchedBy } from "../board/touched-by.ts";
import type { BenchCore } from "./bench-core.ts";
import { isTellable } from "./plugged-now.ts";

type Touches = Readonly<Record<Probe, ProbeTouch>>;

const nowhere: Touches = { red: [], black: [] };
const probes = ["red", "black"] as const;

/**
 * The probe leads of a board put down and lift the probes of the meter, at the step Test and while there is work to do
 * there; while the board cannot be read they stay where they were. Who puts one down by touch puts it elsewhere until its
 * lead moves again; of a lead's ends, the learner says which.
 */
export class ProbeFollower {
  #last = nowhere;

  /** Takes in what the probe leads touch now. @throws StoreError; then it is taken in the next time. */
  follow({ work: { run }, board }: BenchCore): void {
    if (run?.state.step !== "test" || workStateOf(run.state) !== "wiring") {
      this.#last = nowhere;
      return;
    }
    if (!board.sensed || !board.isSettled || !isTellable(board.sensed)) return;
    const now = touches(board.sensed);
    const events = probes.flatMap((probe) => this.#moved(run, probe, now[probe]));
    if (events.length > 0) run.record(events, byBench);
    this.#last = now;
  }

  #moved({ state, kit }: AttemptRun, probe: Probe, touch: ProbeTouch): AttemptEvent[] {
    const last = this.#last[probe];
    if (String(last) === String(touch)) return [];
    const now = state.meter[probe];
    // A probe that was put elsewhere by touch since stays there when its lead is lifted.
    if (touch.length === 0 && !isAmong(last, now)) return [];
    const inTask = kit.stripped.stations.map(({ id }) => id);
    const at = placeOf(touch, now);
    const known = at === null || at === "other-probe" || inTask.includes(stationOf(at)) ? at : null;
    return known === now
      ? []
      : [{ type: "meter-acted", content: { act: { what: "probe", probe, at: known } } }];
  }
}

const touches = (sensed: SensedState): Touches => ({
  red: touchedBy(sensed, "red"),
  black: touchedBy(sensed, "black"),
});

const isAmong = (touch: ProbeTouch, place: ProbePoint): boolean =>
  touch === "other-probe" ? place === touch : touch.some((contact) => contact === place);

/** Where a probe is by what its lead touches; null where that has several ends and none of them has been said. */
function placeOf(touch: ProbeTouch, now: ProbePoint): ProbePoint {
  if (touch === "other-probe") return touch;
  if (touch.length > 1) return isAmong(touch, now) ? now : null;
  return touch[0] ?? null;
}
