import type { StationId } from "../../shared/board/ids.ts";
import { liveLimit, type LiveTest, liveTests } from "../../shared/electrical/check-live-reading.ts";
import { expectedReading } from "../../shared/electrical/expected-reading.ts";
import type { SlotView, TestView } from "../../shared/protocol/test-view.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import { touchedBy } from "../board/touched-by.ts";
import { type CircuitUnderTest, circuitUnderTest, testTaskOf } from "../attempt/circuit-under-test.ts";
import type { MeterState } from "../attempt/meter-state.ts";
import { meterShows } from "../attempt/meter-shows.ts";
import { liveSlotsNow, readingsElsewhere, slotsNow } from "../attempt/test-record.ts";
import type { AttemptToShow } from "./to-show.ts";

/** Off, and not proved dead since it was on. */
export const isUnproved = ({ supply, isUnproved }: MeterState): boolean => supply !== "holds" && isUnproved;

const isLiveTest = (test: SlotView["test"]): test is LiveTest =>
  (liveTests as readonly string[]).includes(test);

/**
 * The circuit under test as its learner's screen shows it. What the meter shows is theirs to see; what there is to say
 * of it, and what it should come to, in practice alone.
 */
export function testView({ run, sensed, hasProbeLeads }: AttemptToShow): TestView {
  const { state, kit } = run;
  const task = testTaskOf(kit);
  const circuit = circuitUnderTest(run);
  const { meter, readings, liveReadings } = state;
  const model = state.mode === "assessed" ? undefined : circuit.model();
  const asked = (slot: SlotView): SlotView =>
    model && state.expectedAsked.includes(slot.id)
      ? { ...slot, expected: expectedOf(circuit, task.way, slot) }
      : slot;
  const ends = meter.ringEnds?.ends ?? circuit.ends;
  return {
    way: task.way,
    kind: task.kind,
    supply: meter.supply,
    ...(isUnproved(meter) ? { isUnproved: true as const } : {}),
    meter: {
      dial: meter.dial,
      testV: meter.testV,
      rcdMultiple: meter.rcdMultiple,
      red: meter.red,
      black: meter.black,
      isNulled: meter.nulledOhm > 0,
      hasLongLead: meter.hasLongLead,
      shows: meterShows(task, circuit, meter),
    },
    ...(hasProbeLeads && sensed ? { probeLeads: probeLeads(sensed) } : {}),
    ends: ends
      ? {
          entries: [...ends],
          state: meter.ringEnds?.state ?? "joined",
          ...(meter.ringEnds?.with ? { with: meter.ringEnds.with } : {}),
        }
      : null,
    link: meter.link,
    parts: task.parts.map((part) => ({
      ...part,
      isIn: !meter.partsOut.some((out) => out.station === part.station && out.part === part.part),
    })),
    switches: task.switches.map((station) => ({
      station,
      position: meter.positions.find((one) => one.station === station)?.position ?? 1,
    })),
    slots: slotsNow(task, readings, model).map(asked),
    liveSlots: liveSlotsNow(task, liveReadings, model).map(asked),
    others: readingsElsewhere(task, readings, model),
    pastCount: state.pastReadingCount,
  };
}

const probeLeads = (sensed: SensedState): NonNullable<TestView["probeLeads"]> => ({
  red: touchedBy(sensed, "red"),
  black: touchedBy(sensed, "black"),
});

function expectedOf(
  { model }: CircuitUnderTest,
  way: StationId,
  slot: SlotView,
): NonNullable<SlotView["expected"]> | null {
  const { test } = slot;
  if (isLiveTest(test)) return liveLimit(model(), way, test) ?? null;
  return expectedReading(model(), way, { test, of: slot.of }) ?? null;
}
