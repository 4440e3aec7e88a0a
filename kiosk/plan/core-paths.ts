import { alongLine, besideLine, lineLength, roundPath } from "../geometry/cable-shape.ts";
import type { Point } from "../geometry/point.ts";
import type { DrawnCore } from "./cores-of.ts";

export interface CorePath extends Pick<DrawnCore, "core" | "isThere"> {
  path: string;
}

export interface CorePaths {
  corePx: number;
  bendPx: number;
  cores: CorePath[];
}

/** Where cores cross: the middle of the longest straight part, and the line on either side of it. */
const crossing = (
  line: readonly Point[],
  spanPx: number,
): { before: Point[]; after: Point[] } | undefined => {
  let longest = 0;
  let at = 0;
  for (let i = 1; i < line.length; i += 1) {
    const far = lineLength(line.slice(i - 1, i + 1));
    if (far > longest) [longest, at] = [far, i];
  }
  const [a, b] = [line[at - 1], line[at]];
  if (!a || !b) return undefined;
  const half = Math.min(spanPx, longest * 0.8) / 2;
  const [p, q] = [alongLine([a, b], longest / 2 - half), alongLine([a, b], longest / 2 + half)];
  return {
    before: [...line.slice(0, at), { x: p.x, y: p.y }],
    after: [{ x: q.x, y: q.y }, ...line.slice(at)],
  };
};

/**
 * The paths of the cores side by side in a cable `widthPx` wide. A core that lands in another's place changes over
 * in the middle of the longest straight part, so that crossed cores are seen crossing.
 */
export const corePaths = (
  line: readonly Point[],
  widthPx: number,
  cores: readonly DrawnCore[],
): CorePaths => {
  const pitchPx = widthPx / Math.max(3, cores.length);
  const bendPx = widthPx * 1.1;
  const offsetOf = (slot: number) => (slot - (cores.length - 1) / 2) * pitchPx * 0.96;
  const beside = (part: readonly Point[], slot: number) =>
    roundPath(besideLine(part, offsetOf(slot)), bendPx, offsetOf(slot));
  const slotOf = ({ toCore }: DrawnCore, own: number): number => {
    const slot = cores.findIndex(({ core }) => core === toCore);
    return slot === -1 ? own : slot;
  };
  const cut = crossing(line, pitchPx * 8);
  return {
    corePx: pitchPx * 0.72,
    bendPx,
    cores: cores.map((core, slot) => {
      const end = slotOf(core, slot);
      const path =
        end === slot || !cut
          ? beside(line, slot)
          : `${beside(cut.before, slot)}${beside(cut.after, end).replace("M", "L")}`;
      return { core: core.core, isThere: core.isThere, path };
    }),
  };
};
