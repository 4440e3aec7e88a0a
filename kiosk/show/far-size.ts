import { capHeightShare } from "../panel/sizes.ts";

/** How far away whoever passes by stands. */
const distanceMm = 3000;
/**
 * ISO 8596: sight of 1.0 reads a letter of 5 minutes of arc. A letter of 10 is read with half of that, one of 15 with
 * ease; small panels have room for the first alone.
 */
const minutes = { small: 10, large: 15 } as const;
const minuteRad = Math.PI / (180 * 60);

/** How high capitals are that can be read from three metres, in millimetres. */
export const farCapMm = (isSmall: boolean): number =>
  distanceMm * Math.tan(minutes[isSmall ? "small" : "large"] * minuteRad);

/** The size of the letters that are read from three metres, in pixels of a panel. */
export const farPx = ({ mmPx, isSmall }: { mmPx: number; isSmall: boolean }): number =>
  (farCapMm(isSmall) * mmPx) / capHeightShare;
