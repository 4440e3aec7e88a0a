import { roundPath } from "../geometry/cable-shape.ts";
import type { Point } from "../geometry/point.ts";
import type { Colour } from "../panel/palette.ts";
import { corePaths } from "./core-paths.ts";
import { coreStyles } from "./core-style.ts";
import type { DrawnCore } from "./cores-of.ts";

/** How a cable looks on the plan. */
export interface CableLook {
  line: readonly Point[];
  widthPx: number;
  cores: readonly DrawnCore[];
  isSized: boolean;
  isPicked: boolean;
  /** A finding is about it. */
  isNoted: boolean;
  /** It was there before the work began: it lies behind what is new. */
  isFaint: boolean;
  /** It is sensed and not on the disk yet: its outline is dotted until it is. */
  isUnsaved: boolean;
}

/** One stroke of a drawing: a path of SVG, its colour in CSS, and its dashes as SVG wants them. */
export interface Stroke {
  path: string;
  colour: string;
  widthPx: number;
  dashes?: string;
}

const ink = (colour: Colour): string => `var(--${colour})`;
const faint = (colour: Colour, percent: number): string =>
  `color-mix(in srgb, ${ink(colour)} ${percent}%, ${ink("paper")})`;

const outlineDashes = ({ isUnsaved, isSized }: CableLook): Pick<Stroke, "dashes"> => {
  if (isUnsaved) return { dashes: "2 4" };
  return isSized ? {} : { dashes: "8 3" };
};

/** The strokes a cable is drawn with, the lowest first. */
export const cableStrokes = (look: CableLook): Stroke[] => {
  const { line, widthPx, isFaint } = look;
  const { corePx, bendPx, cores } = corePaths(line, widthPx, look.cores);
  const path = roundPath(line, bendPx);
  const inkOf = (colour: Colour, percent: number) => (isFaint ? faint(colour, percent) : ink(colour));
  const casing = inkOf("ink", 62);
  const round = (colour: Colour, morePx: number): Stroke => ({
    path,
    colour: ink(colour),
    widthPx: widthPx + morePx,
  });
  return [
    ...(look.isNoted ? [round("danger", 10), round("paper", 5.5)] : []),
    ...(look.isPicked ? [round("ink", 9), round("boxwood", 6)] : []),
    { path, colour: casing, widthPx: widthPx + 2.4, ...outlineDashes(look) },
    { path, colour: inkOf("sheath", 45), widthPx },
    // A core that is not joined is a hollow lane: seen without any colour.
    ...cores
      .filter(({ isThere }) => !isThere)
      .flatMap((core): Stroke[] => [
        { path: core.path, colour: casing, widthPx: corePx + 2.4 },
        { path: core.path, colour: ink("plate"), widthPx: corePx },
      ]),
    ...cores
      .filter(({ isThere }) => isThere)
      .flatMap((core): Stroke[] => {
        const { colour, ground, dashes } = coreStyles[core.core];
        const stroke = { path: core.path, widthPx: corePx };
        const dashed = dashes.map((dash) => dash * corePx).join(" ");
        return [
          { ...stroke, colour: inkOf(ground, 55) },
          ...(dashed === "" ? [] : [{ ...stroke, colour: inkOf(colour, 55), dashes: dashed }]),
        ];
      }),
  ];
};
