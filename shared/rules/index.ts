import { conductorMissing } from "./conductor-missing.ts";
import { cpcMissing } from "./cpc-missing.ts";
import { notServed } from "./not-served.ts";
import { polarity } from "./polarity.ts";
import { ringOpen } from "./ring-open.ts";
import type { Rule } from "./rule.ts";
import { short } from "./short.ts";
import { spurOnePoint } from "./spur-one-point.ts";
import { spurOnSpur } from "./spur-on-spur.ts";
import { spurPerPoint } from "./spur-per-point.ts";

/** Every rule of the pack, in the order of causes. */
export const rules: readonly Rule[] = [
  // Conductors
  short,
  polarity,
  cpcMissing,
  conductorMissing,
  // Shape
  ringOpen,
  spurOnSpur,
  spurOnePoint,
  spurPerPoint,
  // Nothing is hidden from here on
  notServed,
];
