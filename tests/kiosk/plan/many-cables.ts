import { readFileSync } from "node:fs";
import { planZones } from "../../../server/view/plan-zones.ts";
import { type EntryId, stationOf } from "../../../shared/board/ids.ts";
import type { AttemptView, SensedCable } from "../../../shared/protocol/bench-view.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { strip } from "../../../shared/scenario/strip.ts";
import { twelveCables } from "../../speed/twelve-cables.ts";
import { attempt, cable } from "../views.ts";

const ends = [...twelveCables, ["way-2.b", "socket-5.c"]] as const;

/** A house with thirteen cables, so many that some labels find no clear place. The last one was plugged last. */
export const manyCables = (): AttemptView => {
  const read = readScenario(readFileSync("scenarios/build-a-radial.json", "utf8"), "build-a-radial");
  if (!read.ok) throw new Error("it cannot be read");
  const { plan } = read.value;
  const routeBetween = routes(plan);
  const between = (a: string, b: string) => {
    const [from, to] = [a, b].map((entry) => stationOf(entry as EntryId)) as [never, never];
    return routeBetween(from, to)?.pathPoints.map(({ x, y }) => ({ x, y })) ?? [];
  };
  return attempt({
    scenario: strip(read.value),
    zones: planZones(plan),
    cables: ends.map(([a, b]) => {
      const [from, to] = [a, b].toSorted() as [string, string];
      return cable(from, to, between(from, to), { csaMm2: 2.5 });
    }),
  });
};

/** A cable of which so many pins have made contact, sensed a moment ago. */
export const halfIn = (whole: SensedCable, coreCount: number): SensedCable => ({
  ...whole,
  isUnsaved: true,
  conductors: whole.conductors.slice(0, coreCount),
});
