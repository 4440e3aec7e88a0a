import type { BoardDescription, BoardEntry, BoardStation } from "../../shared/board/board.schema.ts";
import { stationId, type Role } from "../../shared/board/ids.ts";
import {
  coreRoles,
  type Side,
  type StationKind,
  type Switching,
  usualEntries,
} from "../../shared/board/station-kinds.ts";
import type { StationSettings } from "../../shared/board/station-settings.schema.ts";

/** A station as a board is planned: lines and places on the face are given out in order. */
interface Planned {
  id: string;
  kind: StationKind;
  label: string;
  sides: Side[];
  hasFront?: boolean;
  settings?: StationSettings;
}

const times = (side: Side, count: number): Side[] => new Array<Side>(count).fill(side);

const way = (label: string, entryCount: number): Planned => ({
  id: `way-${label}`,
  kind: "way",
  label,
  sides: times("feed", entryCount),
});
const socket = (label: string, entryCount: number, gangs: 1 | 2, hasFront = true): Planned => ({
  id: `socket-${label}`,
  kind: "socket-outlet",
  label,
  sides: times("feed", entryCount),
  hasFront,
  settings: { gangs },
});
const fcu = (label: string): Planned => ({
  id: `fcu-${label}`,
  kind: "fcu",
  label,
  sides: [...times("supply", 2), ...times("load", 2)],
});
const appliance = (id: string, kind: NonNullable<StationSettings["appliance"]>): Planned => ({
  id,
  kind: "appliance",
  label: "1",
  sides: ["feed"],
  settings: { appliance: kind },
});
const one = (id: string, kind: StationKind, label: string, sides: Side[]): Planned => ({
  id,
  kind,
  label,
  sides,
});

const smallStations: Planned[] = [
  way("1", 2),
  socket("1", 3, 2, false),
  socket("2", 2, 2, false),
  socket("3", 1, 2, false),
];

/** In the order in which they stand on the face, row by row. */
const workshopStations: Planned[] = [
  way("1", 4),
  way("2", 3),
  way("3", 3),
  socket("1", 4, 2),
  socket("2", 4, 2),
  fcu("1"),
  fcu("2"),
  appliance("boiler-1", "boiler"),
  one("junction-box-1", "junction-box", "1", times("feed", 4)),
  socket("3", 3, 2),
  socket("4", 3, 2),
  socket("5", 3, 1),
  socket("6", 3, 1),
  one("isolator-1", "isolator", "1", ["supply", "load"]),
  appliance("water-heater-1", "water-heater"),
  appliance("shower-1", "shower"),
  one("ceiling-rose-1", "ceiling-rose", "1", ["feed", "feed", "switch"]),
  one("ceiling-rose-2", "ceiling-rose", "2", ["feed", "feed", "switch"]),
  one("plate-switch-1", "plate-switch", "1", ["switch"]),
  one("plate-switch-2", "plate-switch", "2", ["switch"]),
  one("wall-light-1", "luminaire", "1", times("feed", 2)),
  one("wall-light-2", "luminaire", "2", times("feed", 2)),
  one("cooker-control-1", "cooker-control", "1", ["supply", "load"]),
  appliance("cooker-1", "cooker"),
];

const plateSwitch = (label: string, switching: Switching, sides: Side[]): Planned => ({
  id: `plate-switch-${label}`,
  kind: "plate-switch",
  label,
  sides,
  settings: { switching },
});

/** Lights looped at the rose, at the switch and at a joint box, switched from one place, two or three. */
const lightingStations: Planned[] = [
  way("1", 3),
  way("2", 3),
  one("ceiling-rose-1", "ceiling-rose", "1", ["feed", "feed", "switch"]),
  one("ceiling-rose-2", "ceiling-rose", "2", ["feed", "feed", "switch"]),
  plateSwitch("1", "one-way", ["switch", "feed", "feed", "lamp"]),
  plateSwitch("2", "one-way", ["switch", "feed", "feed", "lamp"]),
  plateSwitch("3", "two-way", ["switch", "feed", "feed", "lamp", "strap"]),
  plateSwitch("4", "two-way", ["switch", "feed", "feed", "lamp", "strap"]),
  plateSwitch("5", "intermediate", ["strap-in", "strap-out"]),
  one("junction-box-1", "junction-box", "1", ["feed", "feed", "feed", "switch", "lamp"]),
  ...Array.from({ length: 14 }, (_, index) =>
    one(`wall-light-${index + 1}`, "luminaire", String(index + 1), times("feed", 2)),
  ),
];

/** Code contacts of one entry: enough for every code of the table, none of which is zero. */
const codeBits = 3;

/** Gives every contact, front and code contact the next free line. */
class LinesInOrder {
  count = 0;
  codeCount = 0;
  readonly #hasCodes: boolean;
  constructor(hasCodes: boolean) {
    this.#hasCodes = hasCodes;
  }

  #byRole(roles: readonly Role[]): Partial<Record<Role, number>> {
    return Object.fromEntries(roles.map((role) => [role, this.count++]));
  }

  entry(planned: Planned, side: Side, index: number): BoardEntry {
    const roles = coreRoles(planned.kind, side, planned.settings?.switching);
    // Scenarios name the usual letters of a kind: a board that has fewer entries keeps the same ones.
    const usual = usualEntries[planned.kind].filter((entry) => entry.side === side);
    const letter = usual[planned.sides.slice(0, index).filter((one) => one === side).length]?.letter;
    if (!roles || !letter) throw new Error(`a ${planned.kind} has no such ${side} side`);
    const entry = { letter, side, lines: this.#byRole(roles.map(({ role }) => role)) };
    if (!this.#hasCodes) return entry;
    return { ...entry, codeContacts: Array.from({ length: codeBits }, () => this.codeCount++) };
  }

  front(): Partial<Record<Role, number>> {
    return this.#byRole(["L", "N", "E"]);
  }
}

const inRows = (planned: readonly Planned[], columns: number, lines: LinesInOrder): BoardStation[] => {
  const rows = Math.ceil(planned.length / columns);
  const round = (fraction: number): number => Math.round(fraction * 1000) / 1000;
  const cell = { width: 1 / columns, height: 1 / rows };
  return planned.map((station, index): BoardStation => ({
    id: stationId(station.id),
    kind: station.kind,
    label: station.label,
    face: {
      x: round((index % columns) * cell.width + 0.06 * cell.width),
      y: round(Math.floor(index / columns) * cell.height + 0.06 * cell.height),
      width: round(0.88 * cell.width),
      height: round(0.88 * cell.height),
    },
    entries: station.sides.map((side, entryIndex) => lines.entry(station, side, entryIndex)),
    ...(station.hasFront ? { front: lines.front() } : {}),
    ...(station.settings ? { settings: station.settings } : {}),
  }));
};

/** BCM numbers that no other interface of the Raspberry Pi claims (I2C, SPI and the serial port stay free). */
const chainPins = { shiftClock: 17, dataOut: 27, latch: 22, load: 23, dataIn: 24, outputEnable: 25 };
const codeIn = 5;

const twinAndEarth = (code: number, csaMm2: number) => ({
  code,
  csaMm2,
  cores: ["brown" as const, "blue" as const, "earth" as const],
});

/** What each code on a plug says: a numbering of our own, by size. */
const codes: BoardDescription["codes"] = [
  twinAndEarth(1, 1),
  twinAndEarth(2, 1.5),
  twinAndEarth(3, 2.5),
  twinAndEarth(4, 4),
  twinAndEarth(5, 6),
  twinAndEarth(6, 10),
  { code: 7, csaMm2: 1.5, cores: ["brown", "black", "grey", "earth"] },
];

const chainBoard = (
  id: string,
  name: string,
  planned: readonly Planned[],
  hasCodes: boolean,
): BoardDescription => {
  const lines = new LinesInOrder(hasCodes);
  const stations = inRows(planned, 8, lines);
  const probes = { red: lines.count++, black: lines.count++ };
  return {
    version: 1,
    id,
    name,
    wiring: {
      kind: "chain",
      pins: hasCodes ? { ...chainPins, codeIn } : chainPins,
      lineCount: lines.count,
      ...(hasCodes ? { codeCount: lines.codeCount } : {}),
    },
    ...(hasCodes ? { codes } : {}),
    stations,
    probes,
  };
};

const smallBoard = (): BoardDescription => {
  const stations = inRows(smallStations, 2, new LinesInOrder(false));
  // One pin a line: BCM 4 to 27. 0 and 1 read the identity chip; 2 and 3 have strong pull-ups of the Pi's own.
  const pins = Array.from({ length: 24 }, (_, line) => line + 4);
  return { version: 1, id: "small", name: "Small board", wiring: { kind: "direct", pins }, stations };
};

/** The boards that ship, by the name of their file. The committed files are exactly these. */
export const makeBoards = (): Record<string, BoardDescription> => ({
  small: smallBoard(),
  workshop: chainBoard("workshop", "Workshop board", workshopStations, false),
  "workshop-coded": chainBoard("workshop-coded", "Workshop board with coded plugs", workshopStations, true),
  lighting: chainBoard("lighting", "Lighting board", lightingStations, false),
});
