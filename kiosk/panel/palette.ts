/** Ink on warm paper. Text pairs are 7:1 or better, drawing parts 3:1 or better; a test holds them to it. */
export const palette = {
  paper: "#f4eee1",
  ink: "#23272b",
  plate: "#fffdf7",
  danger: "#8c1c13",
  boxwood: "#e9d7a8",
  "boxwood-edge": "#7a6230",
  quiet: "#4a4f54",
  sound: "#1d4d2f",
  sheath: "#c9c4b6",
  "sheath-loaded": "#8f897b",
  brown: "#6b3f1d",
  blue: "#1d5fa8",
  green: "#1f6b38",
  yellow: "#f0c419",
  black: "#1b1b1b",
  grey: "#6d7277",
} as const;
export type Colour = keyof typeof palette;

/** Which colour text stands on which, for the check of contrast. */
export const textPairs: readonly [Colour, Colour][] = [
  ["ink", "paper"],
  ["ink", "plate"],
  ["ink", "boxwood"],
  ["paper", "ink"],
  ["plate", "ink"],
  ["plate", "danger"],
  ["danger", "plate"],
  ["danger", "paper"],
  ["quiet", "paper"],
  ["quiet", "plate"],
  ["sound", "plate"],
  ["yellow", "ink"],
];

/** Parts of a drawing that must stand out from what they lie on. */
export const drawingPairs: readonly [Colour, Colour][] = [
  ["ink", "paper"],
  ["boxwood-edge", "boxwood"],
  ["boxwood-edge", "plate"],
  ["brown", "plate"],
  ["blue", "plate"],
  ["green", "plate"],
  ["green", "yellow"],
  ["black", "plate"],
  ["grey", "plate"],
  ["danger", "paper"],
];
