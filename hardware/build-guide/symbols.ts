import { box, dot, line, text } from "./svg.ts";

/** A resistor or fuse that lies in a wire: 9 mm long from its left end, with its value above. */
export const resistor = (xMm: number, yMm: number, label: string): string[] => [
  box(xMm, yMm - 1.5, 9, 3),
  text(xMm + 4.5, yMm - 2.3, label, { sizeMm: 2.2, anchor: "middle" }),
];

/** A resistor from a wire up to 3.3 V or down to 0 V; its value stands beside it. */
export function restResistor(xMm: number, yMm: number, to: "3.3 V" | "0 V", label: string): string[] {
  const way = to === "3.3 V" ? -1 : 1;
  return [
    dot(xMm, yMm),
    line([xMm, yMm], [xMm, yMm + way]),
    box(xMm - 0.75, Math.min(yMm + way, yMm + 3.5 * way), 1.5, 2.5),
    text(xMm + 1.4, yMm + 2.9 * way + 0.6, `${label} to ${to}`, { sizeMm: 1.8 }),
  ];
}

/** A capacitor from a wire down to 0 V, with its value beside it. */
export const capacitor = (xMm: number, yMm: number, label: string): string[] => [
  dot(xMm, yMm),
  line([xMm, yMm], [xMm, yMm + 4]),
  line([xMm - 2, yMm + 4], [xMm + 2, yMm + 4]),
  line([xMm - 2, yMm + 5.2], [xMm + 2, yMm + 5.2]),
  line([xMm, yMm + 5.2], [xMm, yMm + 9]),
  line([xMm - 1.5, yMm + 9], [xMm + 1.5, yMm + 9]),
  text(xMm + 3, yMm + 5.5, label, { sizeMm: 2.2 }),
];
