import type { StationId } from "../board/ids.ts";
import { cutOffBy } from "../circuit/cut-off.ts";
import { isSwitchedFcu } from "../circuit/defaults.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * A fixed appliance that nothing cuts off from line and neutral: a switched connection unit, a double-pole switch or
 * a control does. An unswitched unit does for a boiler, by its fuse, where the designer says so.
 */
export const isolation: Rule = {
  id: "isolation",
  variants: { none: "fix", "fuse-only": "query" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "462.2 and 537.2", checked: "from memory" },
  check: (model) =>
    [...cutOffBy(model)].flatMap(([id, cutters]): (Evidence | Missing)[] => {
      const isFed = model.zones.some(({ points }) => points.includes(id));
      if (!isFed || cutters.some((cutter) => isolates(model, cutter))) return [];
      const point = at("station", id);
      const appliance = model.stations.get(id)?.settings?.appliance;
      const [by] = cutters;
      // A fuse does for a boiler: whether it does here hangs on what the appliance is.
      if (by && appliance === undefined) return [missing(point, "appliance")];
      return appliance === "boiler" && by
        ? evidence("fuse-only", [point], { point: id, by }, [point, at("station", by)])
        : evidence("none", [point], { point: id });
    }),
};

function isolates(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  return station !== undefined && (station.kind !== "fcu" || isSwitchedFcu(station));
}
