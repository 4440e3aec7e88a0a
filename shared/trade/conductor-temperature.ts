import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const guide: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Tables I2 and I3; BS EN 60228 coefficient",
  checked: "secondary copy",
};
const memory: Source = { ...guide, checked: "from memory" };
const limit: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Tables 4D5 and 43.1 (70 °C thermoplastic)",
  checked: "secondary copy",
};

/** How copper's resistance follows its temperature, and the temperatures that matter for PVC cable. */
export const conductorTemperature = sourced({
  /** For table work: 1.20 at 70 °C. The heat equation has its own, finer coefficient. */
  resistanceCoefficientPerC: [0.004, guide],
  tabulatedAtC: [20, guide],
  /** 20 °C to 70 °C, cpc incorporated in the cable. */
  hotFactorIncorporated: [1.2, guide],
  /** cpc neither incorporated nor bunched. */
  hotFactorSeparate: [1.04, memory],
  /** 90 °C thermosetting, cpc incorporated. */
  hotFactorThermosetting: [1.28, memory],
  longLifeC: [70, limit],
  faultLimitC: [160, limit],
});
