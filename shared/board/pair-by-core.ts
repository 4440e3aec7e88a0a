import type { Core } from "./station-kinds.ts";

/** Core by core, which place meets which where a cable runs straight: brown to brown, blue to blue, earth to earth. */
export function pairByCore<Place extends { core: Core }>(
  near: readonly Place[],
  far: readonly Place[],
): (readonly [near: Place, far: Place])[] {
  const pairs: (readonly [Place, Place])[] = [];
  for (const place of near) {
    const match = far.find(({ core }) => core === place.core);
    if (match) pairs.push([place, match]);
  }
  return pairs;
}
