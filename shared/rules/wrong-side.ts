import { type StationId, stationOf } from "../board/ids.ts";
import { isTwoSided } from "../board/station-kinds.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { separatorsOf } from "../circuit/separators.ts";
import { nodeId } from "../wiring/buses.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/**
 * True where the supply terminals are fed through the unit itself. By the neutral where no line arrives: which side a
 * cable is on does not hang on one of its cores.
 */
function isFedFromLoad(model: CircuitModel, id: StationId): boolean {
  for (const [conductor, role] of [
    ["live", "L"],
    ["neutral", "N"],
  ] as const) {
    const before = separatorsOf(model, conductor)(nodeId(id, `supply.${role}`));
    if (before) return before.includes(id);
  }
  return false;
}

/** Entries of the load side that a cable lands on. */
const loadEntries = (model: CircuitModel, station: StationId): string[] =>
  [...model.buses.entries]
    .filter(([entry, { side }]) => side === "load" && stationOf(entry) === station)
    .filter(([, { places }]) =>
      places.some(({ contactIndex }) => model.conductorsAt.at(contactIndex).length > 0),
    )
    .map(([entry]) => entry);

/** The feed lands on the load side of a connection unit, an isolator or a control. */
export const wrongSide: Rule = {
  id: "wrong-side",
  variants: { "fed-from-load": "fix" },
  // Its marking by the maker says which side is which; 134.1.1 asks to follow the maker.
  source: { kind: "regulation", document: "BS 7671:2018", clause: "134.1.1", checked: "from memory" },
  check: (model) =>
    [...model.stations.values()].flatMap(({ id, kind }) => {
      if (!isTwoSided(kind) || !model.used.has(id) || !isFedFromLoad(model, id)) return [];
      const place = at("station", id);
      return evidence("fed-from-load", [place], {}, [place, ...allAt("entry", loadEntries(model, id))]);
    }),
};
