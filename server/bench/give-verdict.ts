import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { BenchCore } from "./bench-core.ts";

/**
 * Judges the board as it is now and shows it; asking twice about the same board is not a second try.
 *
 * @throws StoreError; then nothing is shown.
 */
export function giveVerdict(core: BenchCore, run: AttemptRun): void {
  core.work.answer();
  const { verdict, wiringHash } = run.judged();
  const isTry = run.state.asked?.wiringHash !== wiringHash;
  run.record([{ type: "verdict-asked", content: { isTry, wiringHash, verdict } }], core.session.author);
}
