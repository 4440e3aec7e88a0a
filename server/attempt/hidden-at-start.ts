import { isSameFault, nameOfFault } from "../../shared/electrical/fault-name.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import type { ScenarioKit } from "../library.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import { drawFaults } from "./draw-faults.ts";
import { mostFaults } from "./may-hide.ts";

/** What a trainer hid for this start, but for what is hidden there already. */
export function hiddenByTrainer(
  before: readonly AttemptEvent[],
  prepared: { faults: readonly HiddenFault[]; person: string } | undefined,
): Extract<AttemptEvent, { type: "fault-set" }>[] {
  const there = before.flatMap((event) => (event.type === "faults-hidden" ? event.content.faults : []));
  const isThere = (fault: HiddenFault): boolean =>
    there.some((one) => isSameFault(nameOfFault(one), nameOfFault(fault)));
  const { faults = [], person = "" } = prepared ?? {};
  return faults
    .filter((fault) => !isThere(fault))
    .slice(0, mostFaults - there.length)
    .map((fault) => ({ type: "fault-set", content: { fault, person } }));
}

/** What is hidden in the circuit when a go at a scenario begins: nothing, what it sets, or what a new seed draws. */
export function hiddenAtStart(
  { scenario, stripped, routeBetween }: ScenarioKit,
  newSeed: () => number,
): Extract<AttemptEvent, { type: "faults-hidden" }>[] {
  const { hiddenFaults, drawnFaults, asFound, stations } = scenario;
  if (hiddenFaults) return [{ type: "faults-hidden", content: { faults: hiddenFaults } }];
  if (!drawnFaults) return [];
  const seed = newSeed();
  const { cables } = toWiring({ scenario: stripped, built: asFound, routeBetween });
  const ways = new Set(stations.flatMap(({ id, kind }) => (kind === "way" ? [id] : [])));
  const faults = drawFaults(drawnFaults.level, { cables, ways }, seed);
  return [{ type: "faults-hidden", content: { faults, seed } }];
}
