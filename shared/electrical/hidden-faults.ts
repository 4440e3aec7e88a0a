import { byId, type CableId, conductorId, type Role, roleOf, stationOf } from "../board/ids.ts";
import type { Core } from "../board/station-kinds.ts";
import type { HiddenFault } from "../wiring/hidden-fault.schema.ts";
import { insulationLeakage } from "../trade/insulation-leakage.ts";
import type { Conductor, Copper } from "./copper.ts";
import { leastConductorOhm } from "./wiring-network.ts";

/** Insulation between two cores of a cable, by their places among the conductors. */
export interface Leak {
  one: number;
  two: number;
  resistanceOhm: number;
}

/** The copper that meter and load run see: what is sensed, with the hidden faults laid over it. */
export interface AsBuilt extends Copper {
  leaks: Leak[];
}

/** A fault on a cable goes with the cable: once it has been out for this long it is a new cable. */
export const faultGoesAfterMs = 2000;

/** The faults that still stand; `outForMs` says, by cable id, how long a cable that is out has been out at most. */
export function standingFaults(
  faults: readonly HiddenFault[],
  outForMs: ReadonlyMap<string, number>,
): HiddenFault[] {
  return faults.filter(
    (fault) => fault.kind === "missing-link" || (outForMs.get(fault.cable) ?? 0) < faultGoesAfterMs,
  );
}

const coreOf: Record<"L" | "N" | "E", Core> = { L: "brown", N: "blue", E: "earth" };

/**
 * Lays hidden faults over the copper: nothing sensed changes, only what meter and load run see. A fault on a cable
 * that is not there does nothing. L, N and E name the brown, blue and earth core, also in a switch cable.
 */
export function asBuilt(copper: Copper, faults: readonly HiddenFault[] = []): AsBuilt {
  const built: AsBuilt = {
    ...copper,
    nodes: [...copper.nodes],
    conductors: copper.conductors.map((conductor) => ({ ...conductor })),
    links: [...copper.links],
    leaks: soundInsulation(copper),
  };
  for (const fault of faults) lay(built, fault);
  return built;
}

function lay(built: AsBuilt, fault: HiddenFault): void {
  if (fault.kind === "missing-link") return dropLink(built, fault.station, fault.role);
  const core = (name: "L" | "N" | "E"): Conductor | undefined =>
    built.conductors.find((each) => each.cable === fault.cable && each.core === coreOf[name]);
  switch (fault.kind) {
    case "open-core": {
      const broken = core(fault.role);
      if (broken) broken.jointOhm = Infinity;
      return;
    }
    case "high-resistance": {
      const poor = core(fault.role);
      if (poor) poor.jointOhm += fault.resistanceOhm;
      return;
    }
    case "wrong-cpc": {
      const cpc = core("E");
      if (cpc) cpc.csaMm2 = fault.cpcCsaMm2;
      return;
    }
    case "crossed-cores": {
      const [one, two] = [core(fault.roles[0]), core(fault.roles[1])];
      if (one && two) cross(one, two);
      return;
    }
    case "low-insulation": {
      const [one, two] = [core(fault.between[0]), core(fault.between[1])];
      if (!one || !two) return;
      built.leaks.push({
        one: built.conductors.indexOf(one),
        two: built.conductors.indexOf(two),
        resistanceOhm: Math.max(leastConductorOhm, fault.insulationMegohm * 1e6),
      });
    }
  }
}

function cross(one: Conductor, two: Conductor): void {
  [one.to, two.to] = [two.to, one.to];
  [one.toNode, two.toNode] = [two.toNode, one.toNode];
  one.id = conductorId(one.from, one.to);
  two.id = conductorId(two.from, two.to);
}

/**
 * A station's missing link: what joins its supply to its load side, or where it has no such part, what joins its
 * cables in that role. Each cable then ends at a terminal of its own and the cable of the first entry keeps the accessory.
 */
function dropLink(built: AsBuilt, station: string, role: Role): void {
  const roleIs = (id: string): boolean => id.endsWith(`/${role}`) || id.endsWith(`.${role}`);
  const links = built.links.filter((link) => link.station === station && roleIs(link.to));
  if (links.length > 0) {
    built.links = built.links.filter((link) => !links.includes(link));
    return;
  }
  const ends = built.conductors.flatMap((conductor) =>
    (["from", "to"] as const)
      .filter((end) => stationOf(conductor[end]) === station && roleOf(conductor[end]) === role)
      .map((end) => ({ conductor, end, contact: conductor[end] })),
  );
  ends.sort((a, b) => byId(a.contact, b.contact));
  for (const { conductor, end } of ends.slice(1)) {
    // A piece of copper by itself; it has no name of its own and goes by that of the first node.
    conductor[end === "from" ? "fromNode" : "toNode"] = built.nodes.push(built.nodes[0]!) - 1;
  }
}

/** Sound insulation between every two cores of every cable of known length. */
function soundInsulation({ conductors }: Copper): Leak[] {
  const ofCable = new Map<CableId, number[]>();
  conductors.forEach(({ cable }, index) => {
    const cores = ofCable.get(cable);
    if (cores) cores.push(index);
    else ofCable.set(cable, [index]);
  });
  const leaks: Leak[] = [];
  for (const cores of ofCable.values()) {
    const lengthM = conductors[cores[0]!]!.lengthM;
    if (lengthM === undefined) continue;
    const resistanceOhm = (insulationLeakage.soundCableMegohmM * 1e6) / lengthM;
    cores.forEach((one, at) => cores.slice(at + 1).forEach((two) => leaks.push({ one, two, resistanceOhm })));
  }
  return leaks;
}
