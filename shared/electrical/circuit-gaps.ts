import { type ContactId, type StationId, stationOf } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";

/** What keeps the figures of a circuit from being known. */
export interface Gap {
  kind: "cable" | "station" | "contact";
  id: string;
  field: string;
  cause: "value" | "board";
}

/** Contacts that the board cannot tell, by the zones their stations lie in; those in no zone may belong to any. */
const unknownByZone = oncePerModel((model) => {
  const byZone = new Map<Zone, ContactId[]>();
  const anywhere: ContactId[] = [];
  if (model.unknown.size === 0) return { byZone, anywhere };
  const zonesOf = new Map<StationId, Zone[]>();
  for (const zone of model.zones) {
    for (const station of zone.stations) zonesOf.set(station, [...(zonesOf.get(station) ?? []), zone]);
  }
  for (const contact of model.unknown) {
    const zones = zonesOf.get(stationOf(contact));
    if (!zones) anywhere.push(contact);
    for (const zone of zones ?? []) byZone.set(zone, [...(byZone.get(zone) ?? []), contact]);
  }
  return { byZone, anywhere };
});

/** Contacts that the board cannot tell and that could change what flows in these zones. */
export function boardGaps(model: CircuitModel, zones: readonly Zone[]): Gap[] {
  const { byZone, anywhere } = unknownByZone(model);
  const contacts = new Set([...zones.flatMap((zone) => byZone.get(zone) ?? []), ...anywhere]);
  return [...contacts].map((id) => ({ kind: "contact", id, field: "contact", cause: "board" }));
}

/** Cables of these zones whose resistance is not known, by the field that is missing. */
export const cableGaps = (zones: readonly Zone[]): Gap[] => zones.flatMap(gapsIn);

const known = new WeakMap<Zone, Gap[]>();

/** Worked out once for a zone, however many figures ask. */
function gapsIn(zone: Zone): Gap[] {
  const before = known.get(zone);
  if (before) return before;
  const gaps = zone.cables.flatMap(({ id, csaMm2, cpcCsaMm2, lengthM }): Gap[] => {
    const lacks = (field: string): Gap => ({ kind: "cable", id, field, cause: "value" });
    const isTabulated = (sizeMm2: number | undefined): boolean =>
      sizeMm2 !== undefined && copperResistanceMilliohmPerM(sizeMm2) !== undefined;
    const lacksSize = !isTabulated(csaMm2)
      ? [lacks("csaMm2")]
      : isTabulated(cpcCsaMm2)
        ? []
        : [lacks("cpcCsaMm2")];
    return lengthM === undefined ? [...lacksSize, lacks("lengthM")] : lacksSize;
  });
  known.set(zone, gaps);
  return gaps;
}
