import type { StationKind } from "../../../shared/board/station-kinds.ts";
import { type Wiring, wiringSchema } from "../../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";

const kindOf: Record<string, StationKind> = {
  way: "way",
  socket: "socket-outlet",
  box: "junction-box",
  fcu: "fcu",
  rose: "ceiling-rose",
  switch: "plate-switch",
  light: "luminaire",
  isolator: "isolator",
  cooker: "cooker-control",
  appliance: "appliance",
};

export interface Terse {
  /** Settings by station; a station without an entry here has none. */
  settings?: Record<string, StationSettings>;
  /**
   * `"way-1.a socket-1.a 2.5 10"`: two entries, csa in mm² and length in m (`?` leaves one out), then any of
   * `m:101` method, `L-N` one conductor (all are straight where none is listed).
   */
  cables: string[];
  loads?: Record<string, number | { powerW: number; isLongRunning: boolean }>;
  rest?: Record<string, unknown>;
}

/** A wiring from a few words; its stations are those the cables, settings and loads name. */
export function terse({ settings = {}, cables, loads = {}, rest = {} }: Terse): Wiring {
  const specs = cables.map((text) => {
    const [from, to, csa, length, ...more] = text.split(" ");
    const method = more.find((word) => word.startsWith("m:"))?.slice(2);
    const conductors = more.filter((word) => !word.startsWith("m:")).map((word) => word.split("-"));
    return {
      from,
      to,
      ...(csa === undefined || csa === "?" ? {} : { csaMm2: Number(csa) }),
      ...(length === undefined || length === "?" ? {} : { lengthM: Number(length) }),
      ...(method ? { method } : { method: "C" }),
      ...(conductors.length > 0 ? { conductors } : {}),
    };
  });
  const named = specs.flatMap(({ from, to }) => [from, to]).map((entry) => entry!.split(".")[0]!);
  const ids = [...new Set([...Object.keys(settings), ...named, ...Object.keys(loads)])];
  return wiringSchema.parse({
    version: 1,
    stations: ids.map((id) => ({
      id,
      kind: kindOf[id.split("-")[0]!],
      ...(settings[id] ? { settings: settings[id] } : {}),
    })),
    cables: specs,
    loads: Object.entries(loads).map(([station, load]) => ({
      station,
      ...(typeof load === "number" ? { powerW: load } : load),
    })),
    ...rest,
  });
}
