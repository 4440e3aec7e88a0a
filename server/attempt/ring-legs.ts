import { endsOfCable, stationOf } from "../../shared/board/ids.ts";
import { buildModel } from "../../shared/circuit/build-model.ts";
import { ringSharesOf } from "../../shared/electrical/ring-shares.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";

const known = new WeakMap<Wiring, readonly number[]>();

/**
 * Current in amperes in each of the two cables that leave the way, of the first ring that is wired, with the stated
 * loads that are on it. Empty where there is no ring, no load on it, or something of it is not known.
 */
export function ringLegsA(wiring: Wiring): readonly number[] {
  const legsA = known.get(wiring) ?? legsOf(wiring);
  known.set(wiring, legsA);
  return legsA;
}

function legsOf(wiring: Wiring): number[] {
  const [share] = ringSharesOf(buildModel(wiring)).shares;
  if (!share || share.ring.isBridged) return [];
  const [way] = share.ring.stations;
  return share.ring.cables
    .filter(({ id }) => endsOfCable(id).some((entry) => stationOf(entry) === way))
    .map(({ id }) => share.currentA.get(id) ?? 0);
}
