import { z } from "zod";
import { stationIdSchema } from "../../shared/board/ids.schema.ts";
import { readingOhmSchema } from "../../shared/board/quantities.schema.ts";
import { liveTests } from "../../shared/electrical/check-live-reading.ts";
import type { MeterShows } from "../../shared/protocol/test-view.ts";
import type { LiveReading } from "../attempt/attempt-events.ts";
import { meterShows } from "../attempt/meter-shows.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({
  test: z.enum(liveTests),
  way: stationIdSchema,
  /** What is written down. */
  impedanceOhm: readingOhmSchema.optional(),
  currentA: z.number().min(0).max(1_000_000).optional(),
  tripMs: z.number().min(0).max(100_000).optional(),
  isOverRange: z.literal(true).optional(),
  isNoTrip: z.literal(true).optional(),
  judged: z.enum(["pass", "fail"]),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "record-live-reading": z.infer<typeof schema>;
  }
}

/** Puts a reading of the live circuit on record; it is simulated as every other. */
export const recordLiveReading: Act<"record-live-reading"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: ({ state, testTask, circuit }, { test, way, judged, ...written }) => {
    if (way !== testTask.way) return refuse("no-such-place");
    const { meter } = state;
    const isRcd = test.startsWith("rcd");
    if (meter.dial !== (isRcd ? "rcd" : "loop")) return refuse("no-reading");
    if (isRcd && multipleOf[test] !== meter.rcdMultiple) return refuse("no-reading");
    const shown = shownOf(meterShows(testTask, circuit(), meter), test);
    if (!shown) return refuse("no-reading");
    if (Object.keys(written).length !== 1) return refuse("nothing-written");
    const { red, black } = meter;
    const places = {
      ...(red !== null && red !== "other-probe" ? { red } : {}),
      ...(black !== null && black !== "other-probe" ? { black } : {}),
    };
    return events({
      type: "live-reading-recorded",
      content: { test, way, ...places, ...written, judged, shown },
    });
  },
};

const multipleOf: Partial<Record<LiveReading["test"], number>> = {
  "rcd-half": 0.5,
  "rcd-one": 1,
  "rcd-five": 5,
};

function shownOf(shows: MeterShows, test: LiveReading["test"]): LiveReading["shown"] | undefined {
  switch (shows.shows) {
    case "loop":
      return test === "fault-current" ? { currentA: shows.currentA } : { impedanceOhm: shows.impedanceOhm };
    case "over-range":
      return { isOverRange: true };
    case "trip":
      return { tripMs: shows.tripMs };
    case "no-trip":
      return { isNoTrip: true };
    default:
      return undefined;
  }
}
