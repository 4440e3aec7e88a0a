import type { HiddenFault } from "../wiring/hidden-fault.schema.ts";
import type { FaultCore, HiddenFaultKind } from "../wiring/hunt-words.ts";

/** A fault as a learner names it: what it is, in which cores, of which cable or station. */
export interface FaultName {
  kind: HiddenFaultKind;
  /** The id of a cable, of a station where a link is missing. */
  place: string;
  /** In the order L, N, E. */
  cores: readonly FaultCore[];
}

/** What a hidden fault is rightly named. */
export function nameOfFault(fault: HiddenFault): FaultName {
  const { kind } = fault;
  switch (fault.kind) {
    case "open-core":
    case "high-resistance":
      return { kind, place: fault.cable, cores: [fault.role] };
    case "crossed-cores":
      return { kind, place: fault.cable, cores: inOrder(fault.roles) };
    case "wrong-cpc":
      return { kind, place: fault.cable, cores: [] };
    case "missing-link":
      return { kind, place: fault.station, cores: [fault.role] };
    case "low-insulation":
      return { kind, place: fault.cable, cores: inOrder(fault.between) };
  }
}

/** Cores in the order L, N, E, each once. */
export const inOrder = (cores: readonly FaultCore[]): FaultCore[] =>
  (["L", "N", "E"] as const).filter((core) => cores.includes(core));

/** True where two names say the same. */
export const isSameFault = (one: FaultName, two: FaultName): boolean =>
  one.kind === two.kind && isSamePlace(one, two);

/** True where two names point at the same cores of the same place, whatever they say is wrong there. */
export const isSamePlace = (one: FaultName, two: FaultName): boolean =>
  one.place === two.place && inOrder(one.cores).join() === inOrder(two.cores).join();
