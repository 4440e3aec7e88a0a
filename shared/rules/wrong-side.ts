import { byId, contactId, type StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** Isolators and controls whose feed lands on the load side. */
const reversedSwitches = (model: CircuitModel): StationId[] =>
  model.zones.flatMap(({ shape }) =>
    shape.branches.flatMap(({ far, farEntry }) => {
      const kind = model.stations.get(far)?.kind;
      const isSwitch = kind === "isolator" || kind === "cooker-control";
      return isSwitch && model.buses.sideOf.get(farEntry) === "load" ? [far] : [];
    }),
  );

/** Entries of the load side that a cable lands on. */
const loadEntries = (model: CircuitModel, station: StationId): string[] =>
  [...model.buses.sideOf]
    .filter(([entry, side]) => side === "load" && entry.startsWith(`${station}.`))
    .map(([entry]) => entry)
    .filter((entry) =>
      (["L", "N", "E"] as const).some((role) => model.conductorsAt.has(contactId(entry, role))),
    );

/** The feed lands on the load side of a connection unit, an isolator or a control. */
export const wrongSide: Rule = {
  id: "wrong-side",
  variants: { "fed-from-load": "fix" },
  // Its marking by the maker says which side is which; 134.1.1 asks to follow the maker.
  source: { kind: "regulation", document: "BS 7671:2018", clause: "134.1.1", checked: "from memory" },
  check: (model) => {
    const units = model.fusedLinks.filter(({ isReversed }) => isReversed).map(({ fcu }) => fcu);
    return [...new Set([...units, ...reversedSwitches(model)])].sort(byId).flatMap((station) => {
      const place = at("station", station);
      return evidence("fed-from-load", [place], {}, [place, ...allAt("entry", loadEntries(model, station))]);
    });
  },
};
