import { type CableId, cableId, type StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import type { Requirement, Wiring } from "../wiring/wiring.schema.ts";
import { allAt, at } from "./evidence.ts";
import { isToMend, type Place, type RuleId } from "./rule.ts";
import type { Finding, Undetermined } from "./verdict.ts";

/** What the rules say of a wiring, without what a task asks for. */
export interface Looked {
  findings: readonly Finding[];
  undetermined: readonly Undetermined[];
}

/** Where something is not as asked, and where that cannot be told. */
export interface Shortfall {
  places: Place[];
  unsure: Place[];
}

/** The rules on device, load and cable. */
const sizing: ReadonlySet<RuleId> = new Set<RuleId>([
  ...([
    "ring-device",
    "ring-cable",
    "spur-cable",
    "lighting-device",
    "radial-cable",
    "device-cable",
  ] as const),
  ...(["design-current", "least-size", "fused-cable", "fused-load"] as const),
]);

/** Where device, load and cables of the circuit of a way do not go together, by what the rules found on it. */
export function notSized(model: CircuitModel, way: StationId, { findings, undetermined }: Looked): Shortfall {
  const circuit = model.circuits.find((one) => one.way === way);
  const zones = circuit ? [circuit.zone, ...circuit.fusedZones] : [];
  const ids = new Set<string>(
    zones.flatMap(({ stations, cables }) => [...stations, ...cables.map(({ id }) => id)]),
  );
  if (!circuit?.isUsed) return { places: [at("station", way)], unsure: [] };
  const heavy = findings.filter(({ rule, weight }) => sizing.has(rule) && isToMend(weight));
  const causes = heavy.flatMap(({ causes: [first] }) => (first && ids.has(first.id) ? [first] : []));
  const lacking = undetermined.filter(({ rule, place }) => sizing.has(rule) && ids.has(place.id));
  return { places: distinct(causes), unsure: distinct(lacking.map(({ place }) => place)) };
}

/**
 * New cables with which a smaller size would do: put in their place alone, nothing is found that was not found before.
 * As-found cables that the task keeps are as they are.
 */
export function tooLarge(
  { wiring, cables }: CircuitModel,
  { csaMm2: sizes, spareSizes = 1 }: Extract<Requirement, { kind: "thrift" }>,
  looked: Looked,
  look: (wiring: Wiring) => Looked,
): Shortfall {
  const kept = new Set((wiring.wants ?? []).flatMap((want) => (want.kind === "kept" ? want.cables : [])));
  const ordered = [...new Set(sizes)].sort((a, b) => a - b);
  const before = new Set(looked.findings.map(({ id }) => id));
  // What is wrong with a cable comes first: how large it has to be is asked once that is mended.
  const named = new Set(
    looked.findings.flatMap(({ weight, causes }) => (weight === "note" ? [] : causes.map(({ id }) => id))),
  );
  const places: CableId[] = [];
  const unsure: CableId[] = [];
  for (const { id, csaMm2 } of cables) {
    if (kept.has(id) || named.has(id)) continue;
    const smaller =
      csaMm2 === undefined ? undefined : ordered.filter((size) => size < csaMm2).at(-1 - spareSizes);
    if (csaMm2 === undefined) unsure.push(id);
    else if (smaller !== undefined) {
      const { findings, undetermined } = look(withSize(wiring, id, smaller));
      const isWorse = findings.some((one) => one.weight !== "note" && !before.has(one.id));
      if (isWorse) continue;
      if (undetermined.length > 0) unsure.push(id);
      else places.push(id);
    }
  }
  return { places: allAt("cable", places), unsure: allAt("cable", unsure) };
}

/** A wiring with one cable in another size, its protective conductor the usual one of that size. */
const withSize = (wiring: Wiring, id: CableId, csaMm2: number): Wiring => ({
  ...wiring,
  cables: wiring.cables.map((cable) => {
    if (cableId(cable.from, cable.to) !== id) return cable;
    const { cpcCsaMm2: _cpcCsaMm2, ...rest } = cable;
    return { ...rest, csaMm2 };
  }),
});

const distinct = (places: readonly Place[]): Place[] => [
  ...new Map(places.map((place) => [`${place.kind} ${place.id}`, place])).values(),
];
