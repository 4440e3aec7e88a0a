import { assumedFields } from "../../shared/circuit/assumed-fields.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";

/** A wiring with one optional field taken away. */
export interface Without {
  /** Where it was: `stations[2].settings.deviceRatingA`. */
  path: string;
  /** The same without positions: `stations[].settings.deviceRatingA`. */
  field: string;
  wiring: Wiring;
}

/** Keys without which a wiring is none. */
const required: Record<string, readonly string[]> = {
  "": ["version", "stations", "cables"],
  "stations[]": ["id", "kind"],
  "stations[].entries[]": ["letter", "side"],
  "cables[]": ["from", "to"],
  "loads[]": ["station", "powerW"],
  "readings[]": ["test", "way"],
  "readings[].taken": ["ringEnds", "nulledOhm"],
};

/** Groups of optional fields, each of which is taken away by itself. */
const groups = ["supply", "stations[].settings"];

/** Lists that a wiring has as wholes or not at all: their items say nothing by themselves. */
const whole = ["wants", "taskStations", "unknown", "namedFaults", "cables[].conductors"];

/** The wiring once for every optional field it has, without that field. */
export function withoutEachField(wiring: Wiring): Without[] {
  return optionalPaths(wiring, "", "").map(({ path, field, keys }) => {
    const copy = structuredClone(wiring);
    let at = copy as unknown as Record<string, unknown>;
    for (const key of keys.slice(0, -1)) at = at[key] as Record<string, unknown>;
    delete at[keys.at(-1) ?? ""];
    return { path, field, wiring: copy };
  });
}

/** True for a field with a stated default, or of which the format says what leaving it out means. */
export const isAssumed = (field: string): boolean => field in assumedFields;

interface Path {
  path: string;
  field: string;
  keys: string[];
}

function optionalPaths(value: unknown, path: string, field: string, keys: string[] = []): Path[] {
  if (Array.isArray(value))
    return value.flatMap((item: unknown, at) =>
      optionalPaths(item, `${path}[${at}]`, `${field}[]`, [...keys, String(at)]),
    );
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const below = {
      path: path === "" ? key : `${path}.${key}`,
      field: field === "" ? key : `${field}.${key}`,
      keys: [...keys, key],
    };
    const isGroup = groups.includes(below.field);
    const own = isGroup || (required[field] ?? []).includes(key) ? [] : [below];
    return whole.includes(below.field)
      ? own
      : [...own, ...optionalPaths(inner, below.path, below.field, below.keys)];
  });
}
