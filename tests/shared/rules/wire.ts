import { contactId, entryId, stationId, type Role } from "../../../shared/board/ids.ts";
import type { StationKind } from "../../../shared/board/station-kinds.ts";
import { conductorsOf, stationsById } from "../../../shared/wiring/conductors-of.ts";
import type { CableSpec, Station, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";
import { roleOf } from "../../../shared/board/ids.ts";

/** The kind a station is of, by the first word of its id. */
const kindByWord: Record<string, StationKind> = {
  way: "way",
  socket: "socket-outlet",
  box: "junction-box",
  fcu: "fcu",
  rose: "ceiling-rose",
  switch: "plate-switch",
  lamp: "luminaire",
  isolator: "isolator",
  control: "cooker-control",
  cooker: "appliance",
  hob: "appliance",
  oven: "appliance",
  heater: "appliance",
  boiler: "appliance",
  shower: "appliance",
  fan: "appliance",
};

const kindOf = (id: string): StationKind => {
  const kind = kindByWord[id.slice(0, id.indexOf("-"))];
  if (!kind) throw new Error(`no kind of station for ${id}`);
  return kind;
};

/** Settings every table test takes for granted: a 32 A device, twin socket outlets, 13 A fuses. */
const usual: Partial<Record<StationKind, StationSettings>> = {
  way: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32 },
  "socket-outlet": { gangs: 2 },
  fcu: { fuseRatingA: 13 },
};

export interface Extras extends Omit<Partial<Wiring>, "stations" | "cables"> {
  /** Settings by station, beside the usual ones. */
  settings?: Record<string, StationSettings>;
  /** Stations without a cable. */
  also?: string[];
}

/**
 * A wiring from one line a cable: `way-1.a socket-1.a 2.5 10m method-101 -E L:N N:L`. A number is the size, `10m`
 * the length, `-E` a core left out at the `from` end, `L:N` the only cores there are, from role to role; `?` a
 * size that nobody has said.
 */
export const wire = (lines: string[], extras: Extras = {}): Wiring => {
  const { settings = {}, also = [], ...rest } = extras;
  const ids = new Set<string>(also);
  for (const line of lines)
    for (const end of line.split(" ").slice(0, 2)) ids.add(end.slice(0, end.indexOf(".")));
  const stations = [...ids].sort().map((id): Station => {
    const kind = kindOf(id);
    return { id: stationId(id), kind, settings: { ...usual[kind], ...settings[id] } };
  });
  return { version: 1, stations, cables: lines.map((line) => cable(line, stations)), ...rest };
};

function cable(line: string, stations: Station[]): CableSpec {
  const [a = "", b = "", ...words] = line.split(" ");
  const [from, to] = [a, b].map((end) => {
    const [station = "", letter = ""] = end.split(".");
    return entryId(station, letter);
  }) as [CableSpec["from"], CableSpec["to"]];
  const spec: CableSpec = { from, to, csaMm2: 2.5, lengthM: 5 };
  const left: Role[] = [];
  const only: [Role, Role][] = [];
  for (const word of words) {
    if (word === "?") delete spec.csaMm2;
    else if (/^[\d.]+$/.test(word)) spec.csaMm2 = Number(word);
    else if (/^[\d.]+m$/.test(word)) spec.lengthM = Number(word.slice(0, -1));
    else if (word.startsWith("method-")) spec.method = word.slice(7) as NonNullable<CableSpec["method"]>;
    else if (word.startsWith("-")) left.push(word.slice(1) as Role);
    else if (word.includes(":")) only.push(word.split(":") as [Role, Role]);
    else throw new Error(`cannot read "${word}" in "${line}"`);
  }
  if (only.length > 0) spec.conductors = only;
  if (left.length > 0)
    spec.conductors = conductorsOf({ from, to }, stationsById(stations))
      .filter((core) => !left.some((role) => core.from === contactId(from, role)))
      .map((core): [Role, Role] => [roleOf(core.from), roleOf(core.to)]);
  return spec;
}
