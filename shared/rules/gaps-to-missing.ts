import type { Gap } from "../electrical/circuit-gaps.ts";
import type { Missing } from "./rule.ts";

/** What electrical figures lack, as a rule says it. */
export const gapsToMissing = (gaps: readonly Gap[]): Missing[] =>
  gaps.map(({ kind, id, field, cause }) => ({ kind: "missing", place: { kind, id }, field, cause }));
