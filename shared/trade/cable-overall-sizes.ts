import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 6004",
  clause: "nominal overall size",
  checked: "from memory",
};

/** Overall size of flat twin-and-earth. For the heat model only. */
export const cableOverallSizes: readonly {
  csaMm2: number;
  widthMm: number;
  thicknessMm: number;
  source: Source;
}[] = [
  { csaMm2: 1, widthMm: 7.8, thicknessMm: 4.3, source },
  { csaMm2: 1.5, widthMm: 8.2, thicknessMm: 4.9, source },
  { csaMm2: 2.5, widthMm: 10.3, thicknessMm: 5.9, source },
  { csaMm2: 4, widthMm: 11.4, thicknessMm: 6.2, source },
  { csaMm2: 6, widthMm: 13.1, thicknessMm: 7.0, source },
  { csaMm2: 10, widthMm: 17.0, thicknessMm: 9.0, source },
  { csaMm2: 16, widthMm: 19.0, thicknessMm: 10.1, source },
];
