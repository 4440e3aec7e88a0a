import { roleClass, roleOf, stationOf } from "../../shared/board/ids.ts";
import type { CircuitModel } from "../../shared/circuit/model.ts";
import { isLivePass } from "../../shared/electrical/check-live-reading.ts";
import { checkReading, type ReadingCheck } from "../../shared/electrical/check-reading.ts";
import { testedThing } from "../../shared/electrical/test-plan.ts";
import type { RecordedView, SlotView } from "../../shared/protocol/test-view.ts";
import type { Reading } from "../../shared/wiring/wiring.schema.ts";
import type { LiveReading } from "./attempt-events.ts";
import { liveSlots, type TestTask } from "./circuit-under-test.ts";

/** A dead reading on record, checked where a model is passed. */
function recordedView(
  reading: Reading,
  index: number,
  readings: readonly Reading[],
  model: CircuitModel | undefined,
): RecordedView {
  const { test, resistanceOhm, insulationMegohm, isOverRange, judged = "fail" } = reading;
  const of = testedThing(reading);
  return {
    id: `dead-${index}`,
    test,
    ...(of ? { of } : {}),
    value: {
      ...(resistanceOhm === undefined ? {} : { resistanceOhm }),
      ...(insulationMegohm === undefined ? {} : { insulationMegohm }),
      ...(isOverRange ? { isOverRange } : {}),
    },
    judged,
    ...(model ? { check: checkReading(model, reading, readings) } : {}),
  };
}

const deadViews = (readings: readonly Reading[], model: CircuitModel | undefined): RecordedView[] =>
  readings.map((reading, index) => recordedView(reading, index, readings, model));

/** The readings the record of a task asks for, each with the one that was put there last. */
export function slotsNow(
  { slots }: Pick<TestTask, "slots">,
  readings: readonly Reading[],
  model: CircuitModel | undefined,
): SlotView[] {
  const views = deadViews(readings, model);
  return slots.map(({ test, of }) => {
    const recorded = views.findLast((view) => view.test === test && view.of === of);
    return { id: `${test} ${of}`, test, of, ...(recorded ? { recorded } : {}) };
  });
}

/** Readings that were taken where the record asks for none. */
export const readingsElsewhere = (
  { slots }: Pick<TestTask, "slots">,
  readings: readonly Reading[],
  model: CircuitModel | undefined,
): RecordedView[] =>
  deadViews(readings, model).filter(
    (view) => !slots.some(({ test, of }) => test === view.test && of === view.of),
  );

/** The live readings a task asks for, each with the one that was put there last. */
export function liveSlotsNow(
  task: TestTask,
  readings: readonly LiveReading[],
  model: CircuitModel | undefined,
): SlotView[] {
  const views = readings.map((reading, index) => liveView(reading, index, model));
  return liveSlots(task).map(({ test, of }) => {
    const recorded = views.findLast((view) => view.test === test);
    return { id: `${test} ${of}`, test, of, ...(recorded ? { recorded } : {}) };
  });
}

function liveView(reading: LiveReading, index: number, model: CircuitModel | undefined): RecordedView {
  const { test, judged, shown: _shown, red, black: _black, way: _way, ...value } = reading;
  return {
    id: `live-${index}`,
    test,
    ...(red ? { of: stationOf(red) } : {}),
    value,
    judged,
    ...(model ? { check: checkLive(model, reading) } : {}),
  };
}

/** What there is to say of a live reading: its places, what was written down, what was said of it. */
function checkLive(model: CircuitModel, reading: LiveReading): ReadingCheck {
  const { test, way, red, black, judged, shown } = reading;
  if (!red || !black || !isAtPoint(red, black)) return "wrong-points";
  const keys = ["impedanceOhm", "currentA", "tripMs", "isOverRange", "isNoTrip"] as const;
  if (keys.some((key) => reading[key] !== shown[key])) return "misread";
  const isPass = isLivePass(model, way, test, shown);
  if (isPass === undefined) return "unclear";
  if (isPass === (judged === "pass")) return "right";
  return judged === "pass" ? "passed" : "failed";
}

/** Line and earth of one place. */
const isAtPoint = (red: NonNullable<LiveReading["red"]>, black: NonNullable<LiveReading["red"]>): boolean => {
  const classes = new Set([roleClass(roleOf(red)), roleClass(roleOf(black))]);
  return stationOf(red) === stationOf(black) && classes.has("live") && classes.has("earth");
};
