import {
  byId,
  type CableId,
  cableOfConductor,
  conductorId,
  type ConductorId,
  type ContactId,
  endsOfCable,
  endsOfConductor,
  entryOf,
  isFront,
  stationOf,
  type StationId,
} from "../../shared/board/ids.ts";

/** One cable as it is sensed: the conductors between one pair of entries, one or more. */
export interface PluggedCable {
  id: CableId;
  /** Each with its end at the cable's first entry first. */
  conductors: [ContactId, ContactId][];
}

export interface PluggedCables {
  cables: PluggedCable[];
  /** Groups of three contacts or more: plugs stacked on one another, or a short. */
  joints: ContactId[][];
}

type Distance = (a: StationId, b: StationId) => number | undefined;

/** The least tree over a group by plan distance (Prim); of equals the first by id. */
function leastTree(group: readonly ContactId[], distanceM: Distance): ConductorId[] {
  const [first, ...rest] = group.toSorted(byId);
  if (first === undefined) return [];
  const apart = (a: ContactId, b: ContactId): number =>
    stationOf(a) === stationOf(b) ? 0 : (distanceM(stationOf(a), stationOf(b)) ?? Infinity);
  const reached = [first];
  const left = rest;
  const tree: ConductorId[] = [];
  while (left.length > 0) {
    let best = { from: first, index: 0, distanceM: Infinity };
    left.forEach((contact, index) => {
      for (const from of reached) {
        const far = apart(from, contact);
        if (far < best.distanceM) best = { from, index, distanceM: far };
      }
    });
    const [next] = left.splice(best.index, 1);
    if (next === undefined) break;
    tree.push(conductorId(best.from, next));
    reached.push(next);
  }
  return tree;
}

const inOrder = (conductor: ConductorId, cable: CableId): [ContactId, ContactId] => {
  const [a, b] = endsOfConductor(conductor);
  return entryOf(a) === endsOfCable(cable)[0] ? [a, b] : [b, a];
};

/**
 * The cables that groups of joined contacts make, in the order of their ids. Test faces are no place for a
 * cable and are left out. A group of three or more makes no more cables than its least tree by plan distance.
 */
export function cablesOf(groups: readonly ContactId[][], distanceM: Distance): PluggedCables {
  const conductors = groups.flatMap((group) =>
    leastTree(
      group.filter((contact) => !isFront(contact)),
      distanceM,
    ),
  );
  const cables = new Map<CableId, PluggedCable>();
  for (const conductor of conductors.sort(byId)) {
    const id = cableOfConductor(conductor);
    const cable = cables.get(id) ?? { id, conductors: [] };
    cable.conductors.push(inOrder(conductor, id));
    cables.set(id, cable);
  }
  return {
    cables: [...cables.values()].sort((a, b) => byId(a.id, b.id)),
    joints: groups.filter((group) => group.length > 2),
  };
}
