import { conductorId, endsOfCable } from "../../shared/board/ids.ts";
import type { Change } from "../../shared/scenario/change.ts";
import { leastChange } from "../../shared/scenario/least-change.ts";
import { leadsOfCable } from "../board/leads-of-cables.ts";
import type { AttemptState } from "./attempt-state.ts";
import type { Picture, PictureParts } from "./picture-of.ts";
import { builtOf, type SizedCable } from "./settings.ts";

/**
 * What is least to do until all of an attempt is right. Undefined where the board cannot be read everywhere, where
 * plugs are stacked, so that nobody knows what would leave with a cable, and where no change of the wiring does it.
 */
export function leastChangeOf(
  { kit, board, judge }: PictureParts,
  { cables, joints, settings }: Picture,
  { plugged, readings }: Pick<AttemptState, "plugged" | "readings">,
): Change[] | undefined {
  if (plugged.unknown.length > 0 || joints.length > 0) return undefined;
  const built = builtOf(kit.stripped, cables, settings);
  const whole = new Set<string>(cables.filter((cable) => isWhole(board, cable)).map(({ id }) => id));
  return leastChange({
    scenario: kit.scenario,
    board,
    built: {
      ...built,
      readings: [...readings],
      cables: cables.flatMap(({ id }, at) => {
        const spec = built.cables[at];
        if (!spec) return [];
        const { conductors: _conductors, ...straight } = spec;
        return [whole.has(id) ? straight : spec];
      }),
    },
    judge,
    routeBetween: kit.routeBetween,
  });
}

/** True where every core of a cable is in, each straight. */
function isWhole(board: PictureParts["board"], { id, conductors }: SizedCable): boolean {
  const [from, to] = endsOfCable(id);
  const straight = leadsOfCable(board, from, to).map((ends) => conductorId(...ends));
  const there = new Set<string>(conductors.map((ends) => conductorId(...ends)));
  return straight.length === there.size && straight.every((lead) => there.has(lead));
}
