import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { insulationMegohmSchema, readingOhmSchema } from "../../shared/board/quantities.schema.ts";
import { stationIdSchema } from "../../shared/board/ids.schema.ts";
import { roleClass, roleOf } from "../../shared/board/ids.ts";
import { polarityAt } from "../../shared/electrical/polarity-at.ts";
import { type Reading, type Shown, type Taken, testKinds } from "../../shared/wiring/wiring.schema.ts";
import { mayTouch } from "../attempt/may-wire.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { CircuitUnderTest } from "../attempt/circuit-under-test.ts";
import { faultsNow } from "../attempt/hunt-state.ts";
import { meterShows, partsIn, setupOf } from "../attempt/meter-shows.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";
import type { Situation } from "./situation.ts";

const schema = z.strictObject({
  test: z.enum(testKinds),
  way: stationIdSchema,
  /** What is written down: a number, or more than the meter shows. Polarity has none. */
  resistanceOhm: readingOhmSchema.optional(),
  insulationMegohm: insulationMegohmSchema.optional(),
  isOverRange: z.boolean().optional(),
  judged: z.enum(["pass", "fail"]),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "record-reading": z.infer<typeof schema>;
  }
}

/** Puts on record what the learner writes down and says of a reading, with what the meter showed and how it stood. */
export const recordReading: Act<"record-reading"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: (situation, message) => {
    const { testTask } = situation;
    const { red, black } = situation.state.meter;
    if (message.way !== testTask.way) return refuse("no-such-place");
    const live = mayTouch(situation.state);
    if (live) return live;
    if (!isPlace(red) || !isPlace(black)) return refuse("no-reading");
    const reading = { test: message.test, way: message.way, red, black, judged: message.judged };
    const taken = takenNow(situation);
    if (message.test === "polarity") {
      const found = polarityOf(situation, situation.circuit(), red, black);
      const isPolarityRight = found === undefined ? {} : { isPolarityRight: found };
      const content = { ...reading, ...isPolarityRight, taken };
      const showing = faultsThatChange(situation, (circuit) => polarityOf(situation, circuit, red, black));
      return events({ type: "reading-recorded", content }, ...showing);
    }
    const shown = shownNow(situation, situation.circuit(), message.test);
    if (!shown) return refuse("no-reading");
    const { resistanceOhm, insulationMegohm, isOverRange } = message;
    const written = {
      ...(resistanceOhm === undefined ? {} : { resistanceOhm }),
      ...(insulationMegohm === undefined ? {} : { insulationMegohm }),
      ...(isOverRange ? { isOverRange } : {}),
    };
    if (Object.keys(written).length !== 1) return refuse("nothing-written");
    const showing = faultsThatChange(situation, (circuit) => shownNow(situation, circuit, message.test));
    return events(
      { type: "reading-recorded", content: { ...reading, ...written, shown, taken } },
      ...showing,
    );
  },
};

/** The hidden faults without which a reading taken now would be another one; what showed them is evidence of a hunt. */
function faultsThatChange(
  { state, circuit, circuitWithout }: Situation,
  read: (circuit: CircuitUnderTest) => unknown,
): Extract<AttemptEvent, { type: "faults-shown" }>[] {
  const { hunt } = state;
  if (!hunt) return [];
  const shown = read(circuit());
  const standing = new Set(faultsNow(hunt));
  const faults = hunt.faults.flatMap((fault, index) =>
    standing.has(fault) && !isDeepStrictEqual(read(circuitWithout(index)), shown) ? [index] : [],
  );
  return faults.length > 0 ? [{ type: "faults-shown", content: { faults } }] : [];
}

const isPlace = (place: Situation["state"]["meter"]["red"]): place is NonNullable<Reading["red"]> =>
  place !== null && place !== "other-probe";

/** What the meter shows for a test; undefined where it stands at another function or shows nothing to write down. */
function shownNow(
  { state, testTask }: Situation,
  circuit: CircuitUnderTest,
  test: Reading["test"],
): Shown | undefined {
  const { dial } = state.meter;
  if (dial !== (test === "insulation" ? "insulation" : "low-ohms")) return undefined;
  const shows = meterShows(testTask, circuit, state.meter);
  switch (shows.shows) {
    case "over-range":
      return { isOverRange: true };
    case "ohm":
      return { resistanceOhm: shows.resistanceOhm };
    case "megohm":
      return { insulationMegohm: shows.insulationMegohm };
    default:
      return undefined;
  }
}

function takenNow({ state: { meter }, testTask }: Situation): Taken {
  const { ringEnds, link, nulledOhm, hasLongLead, dial, testV } = meter;
  const left = partsIn(testTask, meter);
  return {
    ringEnds: ringEnds?.state ?? "joined",
    ...(ringEnds?.with ? { crossedWith: ringEnds.with } : {}),
    ...(link ? { linkedAtWay: link } : {}),
    nulledOhm,
    ...(hasLongLead ? { hasLongLead } : {}),
    ...(dial === "insulation" ? { testV } : {}),
    ...(left.length > 0 ? { partsIn: left } : {}),
  };
}

/** What polarity shows between two places of a point, whichever probe is where. */
function polarityOf(
  { state, testTask }: Situation,
  circuit: CircuitUnderTest,
  red: NonNullable<Reading["red"]>,
  black: NonNullable<Reading["red"]>,
): boolean | undefined {
  const isRedLine = roleClass(roleOf(red)) === "live";
  const [line, earth] = isRedLine ? [red, black] : [black, red];
  const setup = setupOf(testTask, circuit, state.meter);
  return polarityAt(circuit.built, setup, { line, earth });
}
