import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { ownBranches } from "../circuit/own-branches.ts";
import { wantsOwnCircuit } from "../circuit/own-circuit-wants.ts";
import { statedLoadA } from "../circuit/point-demand.ts";
import { hasSocketOutlet, isLightingPoint } from "../circuit/zone-kinds.ts";
import { applianceLimits } from "../trade/appliance-limits.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * Lights or a fixed appliance straight off a socket-outlet circuit above 16 A. The cables that feed nothing else are
 * causes too: behind a fuse they are judged anew. What no fuse of a connection unit carries has to leave the circuit. An appliance that wants a circuit of its own is left to
 * `own-circuit` on a radial, a shower everywhere.
 */
export const needsFuse: Rule = {
  id: "needs-fuse",
  variants: { lighting: "fix", appliance: "fix", "over-fuse": "fix" },
  source: applianceLimits.sources.needsFuseAboveDeviceA,
  // Behind a fuse, switched as one for a light or an appliance is, all these are judged anew.
  explains: ["isolation", "unswitched", "always-on", "accessory-rating", "fault-loop"],
  check: (model) =>
    model.zones.flatMap((zone) =>
      !zone.isFused && hasSocketOutlet(model, zone) ? checked(model, zone) : [],
    ),
};

type Want = { variant: "lighting" | "appliance" | "over-fuse" } | { lacks: string };

/** What a point asks for: nothing, a fuse, or a value that nobody has said. */
function wantOf(model: CircuitModel, id: StationId, isRing: boolean): Want | undefined {
  if (isLightingPoint(model, id)) return { variant: "lighting" };
  if (model.stations.get(id)?.kind !== "appliance") return undefined;
  const own = wantsOwnCircuit(model, id);
  if (typeof own === "object" && !isRing) return own;
  if (own === "shower" || (own !== false && !isRing)) return undefined;
  const isOverFuse = (statedLoadA(model, id) ?? 0) > fuseLimits.mostRatingA;
  return { variant: isOverFuse ? "over-fuse" : "appliance" };
}

function checked(model: CircuitModel, zone: Zone): (Evidence | Missing)[] {
  const isRing = zone.shape.rings.length > 0;
  const wants = new Map<StationId, Want>();
  for (const id of zone.points) {
    const want = wantOf(model, id, isRing);
    if (want) wants.set(id, want);
  }
  const { station, ratingA: deviceA } = zone.upstream;
  const mostA = applianceLimits.needsFuseAboveDeviceA;
  if (wants.size === 0) return [];
  if (deviceA === undefined) return [missing(at("station", station), "deviceRatingA")];
  if (deviceA <= mostA) return [];
  const lacking = [...wants].flatMap(([id, want]) =>
    "lacks" in want ? [missing(at("station", id), want.lacks)] : [],
  );
  const wanting = [...wants].flatMap(([id, want]) =>
    "variant" in want ? [[id, want.variant] as const] : [],
  );
  const variants = new Map(wanting);
  const found = ownBranches(zone, new Set(variants.keys())).flatMap(({ points, cables, stations }) => {
    const [point] = points;
    const variant = point && variants.get(point);
    if (!point || !variant) return [];
    // What stands on the way to it is judged by its fuse once it has one.
    const between = stations.filter((id) => !points.includes(id));
    const causes = [...allAt("station", [...points, ...between]), ...allAt("cable", cables)];
    const loadA = variant === "over-fuse" ? statedLoadA(model, point) : undefined;
    const facts = { point, deviceA, mostA, mostFuseA: fuseLimits.mostRatingA };
    return evidence(
      variant,
      causes,
      loadA === undefined ? facts : { ...facts, loadA },
      allAt("station", points),
    );
  });
  return [...found, ...lacking];
}
