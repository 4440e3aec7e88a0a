import type { CableId, StationId } from "../../shared/board/ids.ts";

/** An appliance switched at a moment of the run. */
export interface ApplianceSwitching {
  appliance: string;
  station: StationId;
  powerW: number;
  isOn: boolean;
  atS: number;
}

/** The run of loads as the learner has left it; the same log gives the same. */
export interface LoadState {
  /** The moment that is looked at, in seconds. */
  nowS: number;
  programme: readonly ApplianceSwitching[];
  /** The cable whose temperature is looked at; null: the warmest. */
  cable: CableId | null;
}

/** Everything off, at the start. */
export const loadAtRest: LoadState = { nowS: 0, programme: [], cable: null };

/** The run after an appliance was switched; whoever stepped back before that does what came later anew. Pure. */
export const afterSwitching = (load: LoadState, done: ApplianceSwitching): LoadState => ({
  ...load,
  programme: [
    ...load.programme.filter(
      ({ atS, appliance }) => atS < done.atS || (atS === done.atS && appliance !== done.appliance),
    ),
    done,
  ],
});

/** The appliances that are on at the moment that is looked at. */
export function appliancesOn({ programme, nowS }: LoadState): Map<string, ApplianceSwitching> {
  const on = new Map<string, ApplianceSwitching>();
  for (const done of programme) {
    if (done.atS > nowS) continue;
    if (done.isOn) on.set(done.appliance, done);
    else on.delete(done.appliance);
  }
  return on;
}
