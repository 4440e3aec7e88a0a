/** Words of the trade that the screen explains on a tap. */
export const tradeWords = [
  "ring",
  "radial",
  "spur",
  "leg",
  "point",
  "way",
  "device",
  "fcu",
  "junction-box",
  "isolate",
  "Ib",
  "In",
  "Iz",
  "It",
  "line",
  "neutral",
  "earth",
  "rcd",
] as const;

export type TradeWord = (typeof tradeWords)[number];
