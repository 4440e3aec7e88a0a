import type { CableModel } from "./model.ts";

/**
 * False for leads that join no like to like, as line to neutral: that is a fault and no cable, so no size, length or
 * capacity is asked of it.
 */
export const isCable = ({ conductors }: CableModel): boolean =>
  conductors.length === 0 || conductors.some((conductor) => conductor.class !== "crossed");
