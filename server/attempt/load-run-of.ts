import type { CableId } from "../../shared/board/ids.ts";
import { zoneRatingA } from "../../shared/electrical/load-case.ts";
import { type LoadRun, runLoads } from "../../shared/electrical/load-run.ts";
import type { RunLoad } from "../../shared/electrical/run-world.ts";
import { loadRunEveryS, loadRunS } from "../../shared/protocol/load-words.ts";
import type { CircuitUnderTest, TestTask } from "./circuit-under-test.ts";
import type { LoadState } from "./load-state.ts";

const runs = new WeakMap<CircuitUnderTest, WeakMap<LoadState["programme"], LoadRun>>();

/**
 * What two hours of a programme do to a circuit as it was built, hidden faults included, with no other way switched on.
 * Worked out once for a circuit and a programme: moving the clock only looks at another moment of it.
 */
export function loadRunOf(
  task: TestTask,
  circuit: CircuitUnderTest,
  programme: LoadState["programme"],
): LoadRun {
  const ofCircuit = runs.get(circuit) ?? new WeakMap<LoadState["programme"], LoadRun>();
  runs.set(circuit, ofCircuit);
  const known = ofCircuit.get(programme);
  if (known) return known;
  const loads = new Map<string, RunLoad>(
    programme.map(({ appliance: id, station, powerW }) => [id, { id, station, powerW }]),
  );
  const run = runLoads({
    wiring: circuit.wiring,
    built: onThisWay(task, circuit),
    loads: [...loads.values()],
    programme: programme.map(({ appliance, isOn, atS }) => ({ load: appliance, isOn, atS })),
    durationS: loadRunS,
    stepS: loadRunEveryS,
    deviceA: reliedOnA(circuit),
  });
  ofCircuit.set(programme, run);
  return run;
}

/** With the devices of all other ways off. */
const onThisWay = ({ way }: TestTask, { built }: CircuitUnderTest): CircuitUnderTest["built"] => ({
  ...built,
  links: built.links.filter(({ kind, station }) => kind !== "device" || station === way),
});

/** The rating of the least device or fuse before each cable, where it is known. */
export function reliedOnA({ model }: CircuitUnderTest): Map<CableId, number> {
  const circuit = model();
  return new Map(
    circuit.zones.flatMap((zone) => {
      const ratingA = zoneRatingA(circuit, zone);
      return ratingA === undefined ? [] : zone.cables.map(({ id }): [CableId, number] => [id, ratingA]);
    }),
  );
}
