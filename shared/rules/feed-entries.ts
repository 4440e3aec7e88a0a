import { byId, type StationId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { allAt, at } from "./evidence.ts";
import type { Place } from "./rule.ts";

/**
 * The entries an appliance is fed at. What has to be mended is where its cable comes from: a fuse, a switch or a control
 * that it lacks as well is another cause, which must not hide that it hangs on the wrong circuit.
 */
export const feedEntries = (model: CircuitModel, id: StationId): Place[] => {
  const entries = model.cables.flatMap(({ from, to, fromStation, toStation, conductors }) =>
    conductors.length === 0 ? [] : [...(fromStation === id ? [from] : []), ...(toStation === id ? [to] : [])],
  );
  return entries.length === 0 ? [at("station", id)] : allAt("entry", [...new Set(entries)].sort(byId));
};
