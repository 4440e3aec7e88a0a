import { type ContactId, entryOf, type RoleClass, roleClass, roleOf, stationOf } from "../board/ids.ts";
import type { Reading, Taken } from "../wiring/wiring.schema.ts";
import { insulationTestV } from "./left-in-parts.ts";
import { insulationLimit } from "./meter.ts";

/** How a reading was taken for its test: as it should be, with the probes elsewhere, or with something else not so. */
export type ReadingPlace = "right" | "wrong-points" | "wrong-setting";

/**
 * Whether a reading was taken where and as its test is made (IET Guidance Note 3): ring ends apart and then line
 * crossed with neutral and with earth; line linked to earth at the way, or a long lead, for the protective conductor;
 * nothing linked and everything back in its terminals for insulation, at 500 V, or 250 V where electronic parts are in.
 * A reading that does not say how it was taken is right where its probes are.
 */
export function readingPlace(reading: Reading): ReadingPlace {
  const { red, black, taken } = reading;
  if (!red || !black) return "right";
  if (!isAtRightPoints(reading, red, black)) return "wrong-points";
  return !taken || isRightSetting(reading, taken, red, black) ? "right" : "wrong-setting";
}

const classAt = (contact: ContactId): RoleClass => roleClass(roleOf(contact));

function isAtRightPoints({ test, way }: Reading, red: ContactId, black: ContactId): boolean {
  const classes = new Set([classAt(red), classAt(black)]);
  const isAtOnePoint = stationOf(red) === stationOf(black) && stationOf(red) !== way;
  switch (test) {
    case "ring-step-1":
      return (
        classes.size === 1 &&
        stationOf(red) === way &&
        stationOf(black) === way &&
        entryOf(red) !== entryOf(black)
      );
    case "ring-step-2":
      return isAtOnePoint && classes.has("live") && classes.has("neutral");
    case "ring-step-3":
    case "polarity":
      return isAtOnePoint && classes.has("live") && classes.has("earth");
    case "continuity-cpc":
      if (isOfCpcAlone(red, black)) return stationOf(red) !== stationOf(black);
      return isAtOnePoint && classes.has("live") && classes.has("earth");
    case "insulation":
      return classes.size === 2;
  }
}

/** By the long lead: earth at the way to earth at the point. */
const isOfCpcAlone = (red: ContactId, black: ContactId): boolean =>
  classAt(red) === "earth" && classAt(black) === "earth";

function isRightSetting({ test }: Reading, taken: Taken, red: ContactId, black: ContactId): boolean {
  const { ringEnds, crossedWith, linkedAtWay, hasLongLead, testV, partsIn = [] } = taken;
  const isLinked = linkedAtWay === "L-E" && ringEnds === "joined";
  const isCrossedWith = (other: "N" | "E"): boolean =>
    ringEnds === "crossed" && crossedWith === other && linkedAtWay === undefined;
  switch (test) {
    case "ring-step-1":
      return ringEnds === "released" && linkedAtWay === undefined;
    case "ring-step-2":
      return isCrossedWith("N");
    case "ring-step-3":
      return isCrossedWith("E");
    case "polarity":
      return isLinked || isCrossedWith("E");
    case "continuity-cpc":
      if (isOfCpcAlone(red, black)) return hasLongLead === true;
      return isLinked || isCrossedWith("E");
    case "insulation": {
      const isWhole = ringEnds === "joined" && linkedAtWay === undefined;
      return isWhole && testV === insulationTestV(partsIn, insulationLimit().testV);
    }
  }
}
