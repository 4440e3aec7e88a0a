import { type ContactId, type RoleClass } from "../board/ids.ts";
import type { CircuitModel, Ring } from "../circuit/model.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { copperResistanceMilliohmPerM, resistanceFactor } from "../trade/resistance.ts";
import { nodeOfFront } from "../wiring/buses.ts";
import { electricalOf } from "./electrical-model.ts";

/** End to end resistance of one conductor of a ring at 20 °C by its lengths; undefined where they do not say. */
export function endToEndOhm(ring: Ring | undefined, of: RoleClass): number | undefined {
  if (!ring || ring.isBridged || !ring.closes[of] || ring.runs.some(({ cables }) => cables.length > 1))
    return undefined;
  let sumOhm = 0;
  for (const { csaMm2, cpcCsaMm2, lengthM } of ring.cables) {
    const size = of === "earth" ? cpcCsaMm2 : csaMm2;
    const milliohmPerM = size === undefined ? undefined : copperResistanceMilliohmPerM(size);
    if (milliohmPerM === undefined || lengthM === undefined) return undefined;
    sumOhm += (milliohmPerM * lengthM) / 1000;
  }
  return sumOhm;
}

/** Resistance at 20 °C from two contacts back to the way; undefined where one is not reached. */
export function coldOhm(model: CircuitModel, red: ContactId, black: ContactId): number | undefined {
  const { copper, ownOhm } = electricalOf(model);
  const hotOhm = (contact: ContactId): number => {
    const id = nodeOfFront(contact, model.buses);
    const node = id === undefined ? undefined : copper.nodeIndex.get(id);
    return node === undefined ? Infinity : ownOhm[node]!;
  };
  const bothOhm = (hotOhm(red) + hotOhm(black)) / resistanceFactor(conductorTemperature.longLifeC);
  return bothOhm < Infinity ? bothOhm : undefined;
}
