import { type FusePassage, fusePassages } from "../circuit/fuse-passages.ts";
import type { CircuitModel, Ring, Zone } from "../circuit/model.ts";
import { cablesBeyond, farEnds, openRingOf, unfitForRing } from "../circuit/open-legs.ts";
import { allAt, evidence } from "./evidence.ts";
import { lackingOfOpenRing } from "./lacking-sizes.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A run of a ring where some of line, neutral and earth do not pass: one finding a run. */
const openRuns = ({ runs, isBridged }: Ring): Evidence[] =>
  // In a bridged block another path may carry the core; the bridge comes first.
  (isBridged ? [] : runs).flatMap((run) => {
    const cores = run.missing.flatMap(({ id, crossedBy }) => (crossedBy.length > 0 ? crossedBy : [id]));
    const missingClasses = run.missing.map(({ class: conductor }) => conductor);
    if (missingClasses.length === 0) return [];
    const cables = allAt(
      "cable",
      run.cables.map(({ id }) => id),
    );
    return evidence("open", allAt("conductor", [...new Set(cores)]), { cores: missingClasses }, cables);
  });

function openLegs(model: CircuitModel, zone: Zone, passages: readonly FusePassage[]): (Evidence | Missing)[] {
  const open = openRingOf(model, zone);
  if (open.is !== "legs") return lackingOfOpenRing(open, zone);
  const { branches } = open;
  if (branches.length === 0) return [];
  const unfit = new Set(unfitForRing(zone, open).map(({ id }) => id));
  const units = passages.filter((passage) => passage.zone === zone).map(({ fcu }) => fcu);
  const causes = [
    ...allAt("station", units),
    ...allAt("station", zone.ways),
    ...allAt(
      "cable",
      cablesBeyond(zone, branches).filter((id) => !unfit.has(id)),
    ),
  ];
  return evidence("open", causes, { legs: branches.length }, allAt("station", farEnds(zone, branches)));
}

/**
 * A ring that does not close: a core of it is open, or two legs that cannot carry the device leave the way and do
 * not meet, or the task wants a ring and there is none. One leg alone is a radial.
 */
export const ringOpen: Rule = {
  id: "ring-open",
  variants: { open: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "433.1.204 and 643.2.1",
    checked: "secondary copy",
  },
  check: (model) => {
    const passages = fusePassages(model);
    return model.zones.flatMap((zone) => {
      if (zone.isFused) return [];
      return [...zone.shape.rings.flatMap(openRuns), ...openLegs(model, zone, passages)];
    });
  },
};
