import { isReachedBy, type Loss, lossesOf } from "../circuit/losses.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

const say = (variant: string, { stations, cores }: Loss): Evidence[] => {
  const places = allAt("station", stations);
  return evidence(variant, cores.length > 0 ? allAt("conductor", cores) : places, {}, places);
};

const isLive = (model: CircuitModel, { stations }: Loss): boolean =>
  stations.some((id) => {
    const station = model.stations.get(id);
    return station !== undefined && isReachedBy(model, station, "live");
  });

/** A point, isolator, control or connection unit without neutral, dangerous where line is there; or without line. */
export const conductorMissing: Rule = {
  id: "conductor-missing",
  variants: { "neutral-live": "danger", neutral: "fix", line: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.6", checked: "from memory" },
  explains: ["not-served"],
  check: (model) => [
    ...lossesOf(model, "neutral").flatMap((loss) =>
      say(isLive(model, loss) ? "neutral-live" : "neutral", loss),
    ),
    ...lossesOf(model, "live").flatMap((loss) => say("line", loss)),
  ],
};
