import { CableHeating, type RunCable } from "./cable-heating.ts";
import { litPositions } from "./lit-positions.ts";
import type { LoadRunInput } from "./load-run-input.ts";
import { runLinesC } from "./run-lines.ts";
import { type RunDevice, RunWorld } from "./run-world.ts";

/** One course of events at its end. */
export interface Course {
  world: RunWorld;
  heating: CableHeating;
}

/** Goes from event to event along one edge of all bands, and reads off at every point of the series. */
export function followCourse(
  { wiring, built, loads, programme, durationS, stepS, positions }: LoadRunInput,
  devices: readonly RunDevice[],
  cables: readonly RunCable[],
  edge: "earliest" | "latest",
  read: (course: Course) => void,
): Course {
  const conditions = { supply: wiring.supply ?? {}, positions: positions ?? litPositions(built) };
  const world = new RunWorld(built, devices, edge, conditions);
  const heating = new CableHeating(cables, edge === "latest" ? "early" : "late", runLinesC);
  const switchings = [...programme].sort((a, b) => a.atS - b.atS);
  const isOn = new Set<string>();
  let nowS = 0;
  let nextSampleS = 0;
  let nextSwitching = 0;
  const solve = (): void => {
    world.switchTo(
      loads.filter(({ id }) => isOn.has(id)),
      (cable) => heating.of(cable),
    );
  };
  for (;;) {
    let isSwitched = false;
    for (; nextSwitching < switchings.length && switchings[nextSwitching]!.atS <= nowS; nextSwitching++) {
      const { load, isOn: turnsOn } = switchings[nextSwitching]!;
      if (turnsOn) isOn.add(load);
      else isOn.delete(load);
      isSwitched = true;
    }
    if (isSwitched) solve();
    // Whatever opens without delay opens before the point is read.
    while (world.nextOpeningInS() <= 0 && world.pass(0, nowS)) solve();
    if (nowS >= nextSampleS - 1e-9) {
      read({ world, heating });
      nextSampleS += stepS;
    }
    if (nextSampleS > durationS + 1e-9) return { world, heating };
    const switchingS = switchings[nextSwitching]?.atS ?? Infinity;
    const fixedS = Math.min(nextSampleS, switchingS);
    const melting = heating.nextMelting(world.solution);
    const eventInS = Math.min(world.nextOpeningInS(), melting.inS);
    // The time left, not the difference of two times: late in a run that would round a short one to nought.
    const lastsS = Math.min(Math.max(0, fixedS - nowS), eventInS);
    heating.pass(world.solution, lastsS, nowS);
    nowS = nowS + eventInS < fixedS ? nowS + eventInS : fixedS;
    const hasOpened = world.pass(lastsS, nowS);
    const hasMelted = melting.inS <= lastsS;
    if (hasMelted) for (const id of melting.cables) world.melted.set(id, nowS);
    if (hasOpened || hasMelted) solve();
  }
}
