import { at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A cable to a station that the task does not use. */
export const outsideTask: Rule = {
  id: "outside-task",
  variants: { "outside-task": "note" },
  source: { kind: "common practice, no source" },
  check: (model) => {
    const { taskStations } = model.wiring;
    if (!taskStations) return [];
    const used = new Set(taskStations);
    return model.cables.flatMap(({ id, fromStation, toStation, conductors }) => {
      const outside = [fromStation, toStation].filter((station) => !used.has(station));
      if (outside.length === 0 || conductors.length === 0) return [];
      return evidence("outside-task", [at("cable", id)]);
    });
  },
};
