import { leadsOfSpecs } from "../../server/board/leads-of-cables.ts";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { cableId, conductorId } from "../../shared/board/ids.ts";
import { settingKeys } from "../../shared/protocol/attempt-words.ts";
import type { Built } from "../../shared/scenario/scenario.schema.ts";
import type { TestBench } from "./test-bench.ts";

/** Plugs an answer of a task lead by lead, and declares what of it the board does not sense. */
export async function wireAnswer(bench: TestBench, built: Built, board: BoardDescription): Promise<void> {
  bench.port.byHand({ in: leadsOfSpecs(board, built.cables).map((ends) => conductorId(...ends)) });
  bench.atRest();
  const sizes = new Map(bench.attempt().cables.map(({ id, csaMm2 }) => [id, csaMm2]));
  for (const { from, to, csaMm2 } of built.cables) {
    const subject = cableId(from, to);
    if (csaMm2 !== undefined && sizes.has(subject) && sizes.get(subject) !== csaMm2)
      await bench.does("declare", { subject, key: "csaMm2", value: csaMm2 });
  }
  for (const { station, key, value, choices } of bench.attempt().settings) {
    const settings = built.settings?.[station] as Record<string, string | number | boolean> | undefined;
    const wanted = settings?.[key];
    if (wanted !== undefined && wanted !== value && choices.length > 0 && settingKeys.includes(key))
      await bench.does("declare", { subject: station, key, value: wanted });
  }
}
