import type { CableModel } from "../circuit/model.ts";
import { ringSharesOf } from "../electrical/ring-shares.ts";
import { worstOf } from "../electrical/worst-of.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A leg of a ring that carries more than Iz with the loads that are stated. Silent without stated loads. */
export const ringShare: Rule = {
  id: "ring-share",
  variants: { share: "query", long: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "433.1.204",
    checked: "secondary copy",
  },
  check: (model) => {
    const { shares, gaps } = ringSharesOf(model);
    const found = shares.flatMap(({ ring, currentA, longRunningA }): (Evidence | Missing)[] => {
      const lacks = ring.cables.flatMap(({ id, ratingLacks }) =>
        ratingLacks ? [missing(at("cable", id), ratingLacks)] : [],
      );
      if (lacks.length > 0) return lacks;
      for (const [variant, legs] of [
        ["long", longRunningA],
        ["share", currentA],
      ] as const) {
        const excess = ({ id, ratingA = 0 }: CableModel): number => (legs.get(id) ?? 0) - ratingA;
        const over = ring.cables.filter((cable) => excess(cable) > 0).sort((a, b) => excess(b) - excess(a));
        const worst = worstOf(over, excess);
        const [first] = worst;
        if (!first) continue;
        const facts = { legA: legs.get(first.id) ?? 0, ratingA: first.ratingA ?? 0 };
        return evidence(
          variant,
          allAt(
            "cable",
            worst.map(({ id }) => id),
          ),
          facts,
          allAt(
            "cable",
            over.map(({ id }) => id),
          ),
        );
      }
      return [];
    });
    return [...found, ...gapsToMissing(gaps)];
  },
};
