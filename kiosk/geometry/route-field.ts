import type { Point, Rect } from "./point.ts";

/** What cables are laid on: an area of the screen with plates on it, in pixels. */
export interface RouteField {
  width: number;
  height: number;
  /** Distance from lane to lane, in pixels. */
  pitchPx: number;
  plates: readonly RoutePlate[];
  /** The area within the walls round the house: no cable is laid outside it while there is a way inside. */
  house?: Rect | undefined;
  /** A cable shorter than this has no room for its label: it goes another way round where there is one. */
  least?: { levelPx: number; uprightPx: number };
  /** Which cables are laid first where all are laid afresh. */
  first?: RouteOrder;
}

/** Which cables are laid first: by the length of their guides, or the last given first. */
export type RouteOrder = "shortest" | "longest" | "turned";

/** The half of a plate that a cable joins: the left one is fed, the right one feeds on. */
export type PlateHalf = "left" | "right";

/** A plate, with its writing. */
export interface RoutePlate extends Rect {
  id: string;
  /** So much of its top is writing, where no cable comes in. */
  headPx?: number;
}

/** A cable to be laid from plate to plate. */
export interface RouteWish {
  id: string;
  from: string;
  to: string;
  /** The half that it joins at a plate with two. */
  fromHalf?: PlateHalf | undefined;
  toHalf?: PlateHalf | undefined;
  /** The way along the walls that the drawing follows where it can. */
  guide: readonly Point[];
}
