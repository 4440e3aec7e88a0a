import { cableId, endsOfCable, stationOf } from "../../shared/board/ids.ts";
import { type FaultName, isSameFault, nameOfFault } from "../../shared/electrical/fault-name.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import { refuse } from "../refusal.ts";
import type { AttemptRun } from "./attempt-run.ts";
import type { AttemptState } from "./attempt-state.ts";
import { setFaults } from "./hunt-state.ts";

/** As many as the hardest hunt that is drawn, and as many again: more is no circuit any more. */
const mostFaults = 4;

/** Why a fault cannot be taken back any more; undefined where it can. */
export function whyNotUnhidden(state: AttemptState, name: FaultName): Refusal | undefined {
  if (state.status !== "open") return refuse("frozen");
  if (isTested(state)) return refuse("already-tested");
  const isThere = state.hunt && setFaults(state.hunt).some((one) => isSameFault(nameOfFault(one), name));
  return isThere ? undefined : refuse("no-such-place");
}

/** What is on record was read of the circuit as it was: it would be held against the learner. */
const isTested = ({ readings, liveReadings, meter }: AttemptState): boolean =>
  readings.length > 0 || liveReadings.length > 0 || meter.supply !== "off";

/**
 * Why a fault cannot be hidden in what is wired now; undefined where it can. It has to lie where it does something: in a
 * cable that is in, at a station where two cables meet, with cores that are two, and a cpc that is thinner than it was.
 */
export function whyNotHidden(run: AttemptRun, fault: HiddenFault): Refusal | undefined {
  const { state } = run;
  const faults = state.hunt?.faults ?? [];
  if (state.status !== "open") return refuse("frozen");
  if (isTested(state)) return refuse("already-tested");
  if (faults.length >= mostFaults) return refuse("all-hidden", { count: mostFaults });
  if (faults.some((one) => isSameFault(nameOfFault(one), nameOfFault(fault)))) return refuse("in-use");
  if (fault.kind === "missing-link") {
    const ends = run.cables.flatMap(({ id }) => endsOfCable(id).map(stationOf));
    return ends.filter((station) => station === fault.station).length > 1
      ? undefined
      : refuse("no-such-place");
  }
  const cable = run.cables.find(({ id }) => id === fault.cable);
  if (!cable) return refuse("no-such-cable");
  if (fault.kind === "wrong-cpc") {
    const built = run.picture.wiring().cables.find(({ from, to }) => cableId(from, to) === cable.id);
    const csaMm2 = built?.csaMm2 ?? 0;
    return fault.cpcCsaMm2 < csaMm2 ? undefined : refuse("not-a-choice");
  }
  const [one, two] =
    fault.kind === "crossed-cores" ? fault.roles : fault.kind === "low-insulation" ? fault.between : [];
  return one !== undefined && one === two ? refuse("not-a-choice") : undefined;
}
