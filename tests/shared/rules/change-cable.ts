import { conductorId, type ConductorId, type Role, roleClass, roleOf } from "../../../shared/board/ids.ts";
import { conductorsOf, stationsById } from "../../../shared/wiring/conductors-of.ts";
import type { CableSpec, Station } from "../../../shared/wiring/wiring.schema.ts";

/** The cores of a cable from role to role, in the order of the cable. */
export const coresOf = (
  cable: CableSpec,
  stations: readonly Station[],
): { id: ConductorId; pair: [Role, Role] }[] =>
  conductorsOf(cable, stationsById(stations)).map(({ from, to }) => ({
    id: conductorId(from, to),
    pair: [roleOf(from), roleOf(to)],
  }));

/** The cable with those of its cores that are kept. */
export const withConductors = (
  cable: CableSpec,
  stations: readonly Station[],
  isKept: (core: { id: ConductorId; pair: [Role, Role] }) => boolean,
): CableSpec => ({
  ...cable,
  conductors: coresOf(cable, stations)
    .filter(isKept)
    .map(({ pair }) => pair),
});

/**
 * The cable with each two of its cores crossed at its far end: line with neutral, line and neutral with earth. The two
 * live cores of a switch cable may land either way round and are not crossed.
 */
export function crossings(cable: CableSpec, stations: readonly Station[]): CableSpec[] {
  const cores = coresOf(cable, stations).map(({ pair }) => pair);
  return cores.flatMap((_, one) =>
    cores.flatMap((__, two): CableSpec[] => {
      const [a, b] = [cores[one]![0], cores[two]![0]];
      if (two <= one || roleClass(a) === roleClass(b)) return [];
      const far = (at: number): Role => cores[at === one ? two : at === two ? one : at]![1];
      return [{ ...cable, conductors: cores.map(([near], at): [Role, Role] => [near, far(at)]) }];
    }),
  );
}

/** The cable with each of its cores left out in turn. */
export const opened = (cable: CableSpec, stations: readonly Station[]): CableSpec[] =>
  coresOf(cable, stations).map(({ id }) => withConductors(cable, stations, (core) => core.id !== id));
