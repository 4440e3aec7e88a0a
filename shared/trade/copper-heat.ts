import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const withstand: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "434.5.2 and 543.1.3, Tables 43.1 and 54.3",
  checked: "secondary copy",
};
// Table 54.2 is reproduced in online.flipbuilder.com/hzzr/jtap/files/basic-html/page25.html.
const separate: Source = { ...withstand, clause: "543.1.3, Table 54.2" };
const copper: Source = {
  kind: "standard",
  document: "IEC 60949",
  clause: "constants of copper",
  checked: "from memory",
};
// 1.7241e-8 Ω m and 3.93e-3 per °C at 20 °C: Industrial Power Engineering and Applications Handbook, Table 30.1
// (digilib.universitaspertamina.ac.id, its pages 967 to 969).
const annealed: Source = { ...copper, checked: "secondary copy" };
const rounded: Source = { ...copper, checked: "recomputed" };
const plastic: Source = {
  kind: "from memory",
  about: "volumetric heat capacity of PVC insulation and sheath",
};

/** Heating of copper conductors: adiabatic factors and the constants behind them. */
export const copperHeat = sourced({
  /** S >= I sqrt(t) / k; line, neutral and cpc of flat twin-and-earth, 70 °C to 160 °C, to 300 mm². */
  kInCableAsqrtSPerMm2: [115, withstand],
  /** Separate PVC-covered cpc, 30 °C to 160 °C. */
  kSeparateAsqrtSPerMm2: [143, separate],
  rho20OhmM: [1.7241e-8, annealed],
  /** For the heat equation; table work uses the rounder 0.004. */
  alphaPerC: [0.00393, annealed],
  betaC: [234.5, copper],
  /** Nothing carries current beyond it. */
  meltsAtC: [1084, copper],
  copperHeatJPerKCm3: [3.45, copper],
  pvcHeatJPerKCm3: [1.7, plastic],
  /** sqrt(Qc (beta + 20) / rho20) = 225.7, printed as 226. */
  adiabaticConstantAsqrtSPerMm2: [226, rounded],
});
