import type { EntryId, StationId } from "../../shared/board/ids.ts";
import type { RcdMultiple, SwitchingOn } from "../../shared/electrical/live-network.ts";
import type { ProbePoint } from "../../shared/electrical/meter.ts";
import type { MeterFunction } from "../../shared/protocol/meter-words.ts";
import type { MeterAct } from "../../shared/protocol/meter.schema.ts";
import type { RingEndState, TerminalPair } from "../../shared/wiring/test-words.ts";
import type { LeftInPart } from "../../shared/wiring/wiring.schema.ts";

/** The meter, the way and the points as the learner has left them; the same log gives the same. */
export interface MeterState {
  dial: MeterFunction;
  testV: 250 | 500;
  rcdMultiple: RcdMultiple;
  red: ProbePoint;
  black: ProbePoint;
  nulledOhm: number;
  hasLongLead: boolean;
  /** The test key was pressed and nothing was touched since. */
  isPressed: boolean;
  /** What the RCD took when the key was pressed; null where it held. */
  tripMs: number | null;
  ringEnds: { ends: readonly [EntryId, EntryId]; state: RingEndState; with?: "N" | "E" } | null;
  link: TerminalPair | null;
  partsOut: readonly LeftInPart[];
  positions: readonly { station: StationId; position: 0 | 1 }[];
  supply: MeterSupply;
  /** The way was on since the circuit was proved dead last: no hand and no dead test belongs there. */
  isUnproved: boolean;
}

/** Whether the way is switched on; `holds` is on, the other two are what opened it. */
export type MeterSupply = "off" | SwitchingOn;

/** As it lies in its case, and the circuit as it is in use: everything in, nothing linked, and off. */
export const meterAtRest: MeterState = {
  dial: "voltage",
  testV: 500,
  rcdMultiple: 1,
  red: null,
  black: null,
  nulledOhm: 0,
  hasLongLead: false,
  isPressed: false,
  tripMs: null,
  ringEnds: null,
  link: null,
  partsOut: [],
  positions: [],
  supply: "off",
  isUnproved: false,
};

/** What was worked out when an act was done: the ends it was done to, what was nulled, how long the RCD took. */
export interface MeterActed {
  act: MeterAct;
  ends?: readonly [EntryId, EntryId] | undefined;
  nulledOhm?: number | undefined;
  tripMs?: number | undefined;
}

/** True where the meter wants its key pressed before it shows anything. */
export const wantsPress = (dial: MeterFunction): boolean => dial === "insulation" || dial === "rcd";

const isSamePart = (one: LeftInPart, two: LeftInPart): boolean =>
  one.station === two.station && one.part === two.part;

/** The meter after an act. Pure. */
export function afterMeterAct(before: MeterState, { act, ends, nulledOhm, tripMs }: MeterActed): MeterState {
  const meter: MeterState = { ...before, isPressed: false, tripMs: null };
  switch (act.what) {
    case "dial":
      return { ...meter, dial: act.to };
    case "test-voltage":
      return { ...meter, testV: act.testV };
    case "rcd-multiple":
      return { ...meter, rcdMultiple: act.multiple };
    case "probe":
      return { ...meter, [act.probe]: act.at };
    case "null":
      return { ...meter, nulledOhm: nulledOhm ?? meter.nulledOhm };
    case "long-lead":
      return { ...meter, hasLongLead: act.isIn };
    case "press":
      if (!wantsPress(meter.dial)) return meter;
      return {
        ...meter,
        isPressed: true,
        tripMs: tripMs ?? null,
        supply: tripMs === undefined ? meter.supply : "rcd-trips",
      };
    case "ring-ends":
      if (!ends || act.state === "joined") return { ...meter, ringEnds: null };
      return { ...meter, ringEnds: { ends, state: act.state, ...(act.with ? { with: act.with } : {}) } };
    case "link":
      return { ...meter, link: act.between };
    case "part": {
      const part = { station: act.station, part: act.part };
      const others = meter.partsOut.filter((one) => !isSamePart(one, part));
      return { ...meter, partsOut: act.isIn ? others : [...others, part] };
    }
    case "switch": {
      const { station, position } = act;
      const others = meter.positions.filter((one) => one.station !== station);
      return { ...meter, positions: [...others, { station, position }] };
    }
  }
}
