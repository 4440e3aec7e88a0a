import { toWiring } from "../../shared/scenario/to-wiring.ts";
import type { ScenarioKit } from "../library.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import { drawFaults } from "./draw-faults.ts";

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
