/** Words of the trade that the screen explains on a tap. */
export const tradeWords = [
  "ring",
  "radial",
  "spur",
  "point",
  "way",
  "device",
  "fcu",
  "junction-box",
  "Ib",
  "In",
  "Iz",
  "It",
  "line",
  "neutral",
  "earth",
  "rcd",
] as const;
