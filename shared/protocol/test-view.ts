import type { ContactId, EntryId, StationId } from "../board/ids.ts";
import type { LiveLimit, LiveTest, LiveValue } from "../electrical/check-live-reading.ts";
import type { ReadingCheck } from "../electrical/check-reading.ts";
import type { ExpectedReading } from "../electrical/expected-reading.ts";
import type { RcdMultiple, SwitchingOn } from "../electrical/live-network.ts";
import type { ProbePoint } from "../electrical/meter.ts";
import type { ShownReading } from "../electrical/shown-reading.ts";
import type { CircuitKind, TestedThing } from "../electrical/test-plan.ts";
import type { RingEndState, TerminalPair } from "../wiring/test-words.ts";
import type { LeftInPart, TestKind } from "../wiring/wiring.schema.ts";
import type { MeterFunction } from "./meter-words.ts";

/**
 * What the display of the meter shows. `press`: it waits for its key. `live`: the circuit is live and this function is
 * for a dead one. `unproved`: it was live and is not proved dead since. `dead`: the other way round. `no-trip`: the RCD held. Every one is simulated.
 */
export type MeterShows =
  | ShownReading
  | { shows: "press" }
  | { shows: "live" }
  | { shows: "unproved" }
  | { shows: "dead" }
  | { shows: "volts"; voltageV: number }
  | { shows: "loop"; impedanceOhm: number; currentA: number }
  | { shows: "trip"; tripMs: number }
  | { shows: "no-trip" };

export interface MeterView {
  dial: MeterFunction;
  testV: 250 | 500;
  rcdMultiple: RcdMultiple;
  red: ProbePoint;
  black: ProbePoint;
  isNulled: boolean;
  hasLongLead: boolean;
  shows: MeterShows;
}

/** The probes of the meter, by their colour. */
export type Probe = "red" | "black";

/**
 * What a probe lead of the board touches: nothing, a contact or test face, any of the ends of the lead that is in
 * there (the board cannot tell them apart), or the other probe.
 */
export type ProbeTouch = readonly ContactId[] | "other-probe";

/** A reading on record, as the learner wrote it down. */
export interface RecordedView {
  id: string;
  test: TestKind | LiveTest;
  of?: TestedThing;
  value: LiveValue & { resistanceOhm?: number; insulationMegohm?: number };
  judged: "pass" | "fail";
  /** What there is to say of it; practice only. */
  check?: ReadingCheck;
}

/** One reading the record asks for, with the one that stands there. */
export interface SlotView {
  id: string;
  test: TestKind | LiveTest;
  of: TestedThing;
  recorded?: RecordedView;
  /** Once it was asked for; practice only. Null where it cannot be worked out. */
  expected?: ExpectedReading | LiveLimit | null;
}

/** The circuit under test. Made for who stands at the step Test. */
export interface TestView {
  way: StationId;
  kind: CircuitKind;
  supply: "off" | SwitchingOn;
  /** Switched off and not proved dead since: make dead comes before hands and dead tests. */
  isUnproved?: true;
  meter: MeterView;
  /** Where the probe leads of a real board are sensed; absent where it has none. */
  probeLeads?: { red: ProbeTouch; black: ProbeTouch };
  /** What was done to the two ends at the way; null where there are not two. */
  ends: { entries: [EntryId, EntryId]; state: RingEndState; with?: "N" | "E" } | null;
  link: TerminalPair | null;
  parts: (LeftInPart & { isIn: boolean })[];
  switches: { station: StationId; position: 0 | 1 }[];
  slots: SlotView[];
  liveSlots: SlotView[];
  /** Readings that belong to no slot: taken at other points than the record asks for. */
  others: RecordedView[];
  /** Readings of before the circuit was changed: they have to be taken again. */
  pastCount: number;
}
