import { distanceToRect } from "../geometry/point.ts";

/** A finger is some 8 mm wide; further off than half of it nobody means the word. In CSS pixels of a small panel. */
const reachPx = 22;

/** Which marked word of an element a touch means: the nearest one within a finger's reach. */
export const nearestWord = (within: HTMLElement, x: number, y: number): string | undefined => {
  const near = [...within.querySelectorAll<HTMLElement>("[data-word]")]
    .flatMap((node) =>
      [...node.getClientRects()].map((rect) => ({
        id: node.dataset["word"],
        far: distanceToRect({ x, y }, rect),
      })),
    )
    .filter(({ far }) => far <= reachPx)
    .sort((a, b) => a.far - b.far);
  return near[0]?.id;
};
