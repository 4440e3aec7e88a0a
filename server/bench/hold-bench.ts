import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { EventType } from "../../shared/protocol/log-row.ts";
import { StoreError } from "../store/store-error.ts";
import type { BenchCore } from "./bench-core.ts";

/** Puts what a trainer did to the whole bench into the log, with the work that lies open on it where there is some. */
export function noteHold(core: BenchCore, type: EventType, content: object, author: Author): void {
  const { parts, work } = core;
  if (!parts.records) throw new StoreError("damaged", {});
  const attemptId = (work.isOpen && work.state?.id) || null;
  parts.records.log.append([{ attemptId, type, author, content }]);
}

/** Why a bench is no longer frozen: somebody of the staff said so, or nothing was heard from the lead for too long. */
export type ThawReason = "told" | "lead-lost";

/** Freezes the bench, or lets it go on. What is so already is done and not written again. @throws StoreError */
export function setFrozen(core: BenchCore, isFrozen: boolean, person: string, author: Author): void {
  if (core.hold.isFrozen === isFrozen) return;
  if (isFrozen) noteHold(core, "bench-frozen", { person }, author);
  else noteHold(core, "bench-thawed", { why: "told" satisfies ThawReason, person }, author);
  if (isFrozen) core.hold.freeze();
  else core.hold.thaw();
}

/** Nobody can be reached who could let the bench go on: it does so by itself. */
export function thawAlone(core: BenchCore): void {
  if (!core.hold.isFrozen) return;
  core.hold.thaw();
  core.health.guard(() => noteHold(core, "bench-thawed", { why: "lead-lost" satisfies ThawReason }, byBench));
  core.publish();
}
