import type { ContactId, StationId } from "../../shared/board/ids.ts";
import { leftInOhm } from "../../shared/electrical/left-in-parts.ts";
import {
  type LiveNetwork,
  liveNetwork,
  loopBetweenOhm,
  prospectiveA,
  rcdTripMs,
  voltageBetweenV,
} from "../../shared/electrical/live-network.ts";
import type { MeterSetup } from "../../shared/electrical/meter-setup.ts";
import { rcdMaOf } from "../../shared/electrical/check-live-reading.ts";
import { showInsulation, showOhm, unclearFor } from "../../shared/electrical/shown-reading.ts";
import type { MeterShows } from "../../shared/protocol/test-view.ts";
import { meterLimits } from "../../shared/trade/meter-limits.ts";
import type { TerminalPair } from "../../shared/wiring/test-words.ts";
import type { LeftInPart } from "../../shared/wiring/wiring.schema.ts";
import type { CircuitUnderTest, TestTask } from "./circuit-under-test.ts";
import { type MeterState, wantsPress } from "./meter-state.ts";

const sidesOf: Record<TerminalPair, ["L" | "N", "N" | "E"]> = {
  "L-N": ["L", "N"],
  "L-E": ["L", "E"],
  "N-E": ["N", "E"],
};

/** What was left in between line and neutral of the points. */
export const partsIn = ({ parts }: TestTask, { partsOut }: MeterState): LeftInPart[] =>
  parts.filter(({ station, part }) => !partsOut.some((out) => out.station === station && out.part === part));

/** The circuit as the learner has left it for the meter. */
export function setupOf(task: TestTask, { wiring }: CircuitUnderTest, meter: MeterState): MeterSetup {
  const { ringEnds, link, positions, dial } = meter;
  const at = dial === "insulation" ? "insulation" : "low-ohms";
  return {
    positions: new Map(positions.map(({ station, position }) => [station, position])),
    partsIn: leftInOhm(partsIn(task, meter), wiring.loads ?? [], at),
    ...(link ? { links: [{ way: task.way, between: sidesOf[link] }] } : {}),
    ...(ringEnds
      ? {
          ringEnds: new Map([
            [
              task.way,
              {
                ends: [...ringEnds.ends],
                state: ringEnds.state,
                ...(ringEnds.with ? { with: ringEnds.with } : {}),
              },
            ],
          ]),
        }
      : {}),
  };
}

/** The circuit with its way switched on. */
export const liveOf = (task: TestTask, circuit: CircuitUnderTest, meter: MeterState): LiveNetwork =>
  liveNetwork(
    circuit.built,
    { ...setupOf(task, circuit, meter), devicesOn: new Set<StationId>([task.way]) },
    circuit.wiring.supply,
  );

/** What the display shows: of the dead circuit as it is wired, of the live one as it is supplied. All simulated. */
export function meterShows(task: TestTask, circuit: CircuitUnderTest, meter: MeterState): MeterShows {
  const { dial, red, black, nulledOhm, hasLongLead, isPressed, supply } = meter;
  const isLive = supply === "holds";
  if (dial === "low-ohms" || dial === "insulation") {
    // A meter on a live circuit says so and measures nothing.
    const areTogether = red === "other-probe" || black === "other-probe";
    if (isLive && !areTogether) return { shows: "live" };
    if (meter.isUnproved && !areTogether) return { shows: "unproved" };
    const setup = setupOf(task, circuit, meter);
    if (dial === "low-ohms") {
      const longLeadOhm = hasLongLead ? { longLeadOhm: meterLimits.longLeadOhm } : {};
      return showOhm(circuit.wiring, circuit.built, setup, { red, black, nulledOhm, ...longLeadOhm });
    }
    return isPressed
      ? showInsulation(circuit.wiring, circuit.built, setup, { red, black })
      : { shows: "press" };
  }
  if (red === "other-probe" || black === "other-probe") return { shows: "volts", voltageV: 0 };
  if (red === null || black === null) return { shows: "open" };
  const areSizesNeeded = dial === "loop";
  const because = unclearFor(circuit.wiring, circuit.built, [red, black], { areSizesNeeded });
  if (because) return { shows: "unclear", because };
  if (dial === "rcd" && isPressed && meter.tripMs !== null) return { shows: "trip", tripMs: meter.tripMs };
  if (dial === "voltage") return volts(task, circuit, meter, red, black);
  if (!isLive) return { shows: "dead" };
  if (wantsPress(dial)) return isPressed ? { shows: "no-trip" } : { shows: "press" };
  return loop(task, circuit, meter, red, black);
}

function volts(
  task: TestTask,
  circuit: CircuitUnderTest,
  meter: MeterState,
  red: ContactId,
  black: ContactId,
): MeterShows {
  if (meter.supply !== "holds") return { shows: "volts", voltageV: 0 };
  return {
    shows: "volts",
    voltageV: Math.round(voltageBetweenV(liveOf(task, circuit, meter), red, black)),
  };
}

function loop(
  task: TestTask,
  circuit: CircuitUnderTest,
  meter: MeterState,
  red: ContactId,
  black: ContactId,
): MeterShows {
  const ohm = loopBetweenOhm(liveOf(task, circuit, meter), red, black);
  if (ohm > meterLimits.mostOhm) return { shows: "over-range" };
  const impedanceOhm = Math.round(ohm * 100) / 100;
  return { shows: "loop", impedanceOhm, currentA: Math.round(prospectiveA(Math.max(ohm, 0.01))) };
}

/** How long the RCD takes when the key is pressed now; undefined where it holds or nothing is tested. */
export function tripMsNow(task: TestTask, circuit: CircuitUnderTest, meter: MeterState): number | undefined {
  const { dial, red, black, supply, rcdMultiple } = meter;
  if (dial !== "rcd" || supply !== "holds") return undefined;
  if (red === null || black === null || red === "other-probe" || black === "other-probe") return undefined;
  const loopOhm = loopBetweenOhm(liveOf(task, circuit, meter), red, black);
  return rcdTripMs(rcdMaOf(circuit.model(), task.way), rcdMultiple, loopOhm);
}
