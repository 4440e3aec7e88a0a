import type { StationId } from "../board/ids.ts";
import { type FusePassage, fusePassages } from "../circuit/fuse-passages.ts";
import type { Branch, CircuitModel, Ring, Zone } from "../circuit/model.ts";
import { cablesBeyond, farEnds } from "../circuit/open-legs.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import { lackingOf } from "./lacking-sizes.ts";
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

function openLegs(
  model: CircuitModel,
  zone: Zone,
  isWanted: boolean,
  passages: readonly FusePassage[],
): (Evidence | Missing)[] {
  const { legs, lacking } = zone.spurs;
  const { branches, rings, loops } = zone.shape;
  if (rings.length > 0 || branches.length === 0) return [];
  const first = branches.filter(({ depth }) => depth === 1);
  const said = (which: readonly Branch[]): Evidence[] => {
    const units = passages.filter((passage) => passage.zone === zone).map(({ fcu }) => fcu);
    const causes = [
      ...allAt("station", units),
      ...allAt("station", zone.ways),
      ...allAt("cable", cablesBeyond(zone, which)),
    ];
    return evidence("open", causes, { legs: which.length }, allAt("station", farEnds(zone, which)));
  };
  // A loop that never reaches the way has to go first: it may be the ring that is meant.
  if (isWanted) return loops.length > 0 ? [] : said(first);
  const hasSocketOutlet = zone.points.some((id) => model.stations.get(id)?.kind === "socket-outlet");
  if (!hasSocketOutlet || first.length < 2) return [];
  const { ratingA } = zone.upstream;
  if (ratingA === undefined) return [missing(at("station", zone.upstream.station), "deviceRatingA")];
  // On a smaller device nobody means a ring: its cables are judged as those of a radial.
  if (ratingA < ringLimits.leastDeviceA) return [];
  const unknown = lacking.filter(({ depth }) => depth === 1);
  if (unknown.length > 0 && legs.length + unknown.length > 1)
    return unknown.flatMap((branch) => lackingOf(branch, zone));
  // With two legs of several points, one of a single point is the spur from the way that it would be on a ring.
  const fed = legs.filter(({ pointCount }) => pointCount > 0);
  const long = fed.filter(({ pointCount }) => pointCount > 1);
  const meant = long.length > 1 ? long : fed;
  return meant.length > 1 ? said(meant) : [];
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
    const wanted = new Set(
      (model.wiring.wants ?? []).flatMap((want) =>
        want.kind === "shape" && want.shape === "ring" ? zonesOfStation(model, want.of) : [],
      ),
    );
    const passages = fusePassages(model);
    return model.zones.flatMap((zone) => {
      if (zone.isFused) return [];
      return [...zone.shape.rings.flatMap(openRuns), ...openLegs(model, zone, wanted.has(zone), passages)];
    });
  },
};

function zonesOfStation(model: CircuitModel, station: StationId): Zone[] {
  return model.zones.filter((zone) => !zone.isFused && zone.stations.includes(station));
}
