import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { StationKind } from "../../shared/board/station-kinds.ts";
import type { Fact, Said, ScenarioCard } from "../../shared/protocol/bench-view.ts";
import type { LackKey } from "../../shared/protocol/said-keys.ts";
import { type Lacking, lacking } from "../../shared/scenario/fits-board.ts";
import type { ScenarioKit } from "../library.ts";

const lack = (key: LackKey, facts: Record<string, Fact>): Said => ({ key, facts });

function lackSaid(one: Lacking): Said {
  const { station } = one;
  switch (one.kind) {
    case "station":
      return lack("scenario.lack.station", { kind: one.stationKind, count: 1 });
    case "other-kind":
      return lack("scenario.lack.kind", { station, kind: one.stationKind });
    case "entry":
      return lack("scenario.lack.entries", { station });
    case "setting":
      return lack("scenario.lack.setting", { station });
  }
}

/** Stations that lack several entries say so once, stations of a kind that are not there are counted. */
function lacksSaid(all: readonly Lacking[]): Said[] {
  const said = new Map<string, Said>();
  for (const one of all) {
    const next = lackSaid(one);
    const name = `${next.key} ${String(next.facts["station"] ?? next.facts["kind"])}`;
    const known = said.get(name);
    if (known && typeof known.facts["count"] === "number") known.facts["count"] += 1;
    else if (!known) said.set(name, next);
  }
  return [...said.values()];
}

/** What is offered on this board: every scenario, with what the board has not got for it. */
export const scenarioCards = (
  scenarios: ReadonlyMap<string, ScenarioKit>,
  board: BoardDescription,
): ScenarioCard[] =>
  [...scenarios.values()].map(({ stripped, isDraft }) => {
    const counts = new Map<StationKind, number>();
    for (const { kind } of stripped.stations) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    const { id, title, place, level, teaches, task } = stripped;
    const needs = [...counts].map(([kind, count]) => ({ kind, count }));
    const lacks = lacksSaid(lacking(stripped, board));
    return { id, title, place, level, teaches, task, needs, lacks, ...(isDraft ? { isDraft } : {}) };
  });
