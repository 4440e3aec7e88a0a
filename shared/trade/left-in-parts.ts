import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };
const regulation: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "643.3.3",
  checked: "from memory",
};

/** What an insulation tester reads through parts that lie between line and neutral and were left in. */
export const leftInParts = sourced({
  /** A neon indicator with its resistor; it does not light at the few volts of an ohmmeter. */
  neonMegohm: [0.2, practice],
  /** Electronic parts of an appliance, behind their rectifier. */
  electronicsMegohm: [0.05, practice],
  /** Test voltage where electronic parts cannot be taken out. */
  sensitiveTestV: [250, regulation],
});
