import { voltageDropsOf } from "../electrical/voltage-drops.ts";
import { worstOf } from "../electrical/worst-of.ts";
import { allAt, evidence } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Rule } from "./rule.ts";

/** More voltage lost from the origin to a point than 3 % for lighting and 5 % for the rest. One finding a device or fuse. */
export const voltDrop: Rule = {
  id: "volt-drop",
  variants: { lighting: "fix", other: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "525.202 and Appendix 4 section 6.4",
    checked: "secondary copy",
  },
  isNeverHidden: true,
  check: (model) => {
    const { points, gaps } = voltageDropsOf(model);
    const over = [...points.values()].filter(({ dropV, limitV }) => dropV > limitV);
    const found = model.zones.flatMap((zone) =>
      [true, false].flatMap((isLighting) => {
        const here = over
          .filter((point) => point.zone === zone && point.isLighting === isLighting)
          .sort((a, b) => b.dropV - a.dropV);
        const worst = worstOf(here, ({ dropV }) => dropV);
        const [first] = worst;
        if (!first) return [];
        const { dropV, limitV, isStated } = first;
        return evidence(
          isLighting ? "lighting" : "other",
          allAt(
            "station",
            worst.map(({ station }) => station),
          ),
          { dropV, limitV, isStated },
          allAt(
            "station",
            here.map(({ station }) => station),
          ),
        );
      }),
    );
    return [...found, ...gapsToMissing(gaps)];
  },
};
