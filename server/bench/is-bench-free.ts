import { readThroughOr } from "../store/read-through-or.ts";
import type { BenchCore } from "./bench-core.ts";

/** True while nobody's work lies open on the bench and nobody waits for a check: a start anew would take nothing away. */
export const isBenchFree = ({ work, parts: { records } }: BenchCore): boolean =>
  !work.isOpen &&
  readThroughOr([], () => records?.attempts.page({ status: "ready" }, 1).attempts ?? []).length === 0;
