import { byId, roleClass, roleOf } from "../board/ids.ts";
import type { ConductorModel } from "../circuit/conductor-model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A lead from a neutral to an earth contact, wherever it is: one finding a cable. */
export const neutralEarth: Rule = {
  id: "neutral-earth",
  variants: { joined: "danger" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "411.4 and 531.3.1",
    checked: "from memory",
  },
  standsWithUnknown: true,
  check: (model) => {
    const byCable = new Map<string, ConductorModel[]>();
    for (const conductor of model.crossed) {
      const classes = [roleClass(roleOf(conductor.from)), roleClass(roleOf(conductor.to))];
      if (!classes.includes("neutral") || !classes.includes("earth")) continue;
      byCable.set(conductor.cable, [...(byCable.get(conductor.cable) ?? []), conductor]);
    }
    return [...byCable.values()].flatMap((list) => {
      const causes = allAt("conductor", list.map(({ id }) => id).sort(byId));
      return evidence("joined", causes, {}, [
        ...causes,
        ...allAt(
          "contact",
          list.flatMap(({ from, to }) => [from, to]),
        ),
      ]);
    });
  },
};
