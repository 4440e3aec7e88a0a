import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { conductorId } from "../../shared/board/ids.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import { changeBetween, isJoinedAlike, type Plugged } from "../../shared/wiring/plugged.ts";
import { leadsOfSpecs } from "../board/leads-of-cables.ts";
import { asFoundCables } from "./settings.ts";

/** What assessed work may begin on, or how many leads have to come out and go in first. */
export type BoardAtStart =
  { begunOn: "clear-board" | "as-found" } | { begunOn: undefined; outCount: number; inCount: number };

/** Holds a board as it is sensed against what was found there by the scenario, lead by lead. */
export function boardAtStart(
  board: BoardDescription,
  scenario: StrippedScenario,
  plugged: Plugged,
): BoardAtStart {
  const leads = leadsOfSpecs(board, [...asFoundCables(scenario).values()]);
  const wanted: Plugged = {
    joins: leads.map((lead) => conductorId(...lead)),
    codes: [],
    unknown: plugged.unknown,
  };
  if (isJoinedAlike(wanted, plugged)) return { begunOn: leads.length === 0 ? "clear-board" : "as-found" };
  const change = changeBetween(plugged, wanted);
  return { begunOn: undefined, outCount: change?.removed.length ?? 0, inCount: change?.added.length ?? 0 };
}
