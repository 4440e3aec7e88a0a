import type { FieldProblem } from "../reading/problem.ts";
import { settingsByKind } from "./settings-by-kind.ts";
import type { StationKind } from "./station-kinds.ts";
import type { StationSettings } from "./station-settings.schema.ts";

/** Complains of settings that mean nothing at a station of this kind. */
export function settingProblems(
  field: string,
  kind: StationKind,
  settings: StationSettings | undefined,
): FieldProblem[] {
  const allowed: readonly string[] = settingsByKind[kind];
  return Object.keys(settings ?? {})
    .filter((key) => !allowed.includes(key))
    .map((key) => ({
      field: `${field}.${key}`,
      message: `it means nothing at a ${kind}`,
      remedy: `Remove it. Settings of a ${kind}: ${allowed.join(", ")}.`,
    }));
}
