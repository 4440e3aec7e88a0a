import { voltageDropsOf } from "../electrical/voltage-drops.ts";
import { worstOf } from "../electrical/worst-of.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
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
    const over = [...points.values()].filter(({ sureDropV, limitV }) => sureDropV > limitV);
    const unsure = [...points.values()].filter(
      ({ dropV, sureDropV, limitV }) => dropV > limitV && sureDropV <= limitV,
    );
    const unstated = new Set(unsure.flatMap((point) => point.unstated));
    const found = model.zones.flatMap((zone) =>
      [true, false].flatMap((isLighting) => {
        const here = over
          .filter((point) => point.zone === zone && point.isLighting === isLighting)
          .sort((a, b) => b.sureDropV - a.sureDropV);
        const worst = worstOf(here, ({ sureDropV }) => sureDropV);
        const [first] = worst;
        if (!first) return [];
        const { sureDropV: dropV, limitV } = first;
        // Where the rest hangs on a load that nobody has stated, what is sure are the stated ones.
        const isStated = first.isStated || first.unstated.length > 0;
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
    const asked = [...unstated].map((id) => missing(at("station", id), "powerW"));
    return [...found, ...asked, ...gapsToMissing(gaps)];
  },
};
