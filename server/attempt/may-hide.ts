import { type CableId, cableId, endsOfCable, stationOf } from "../../shared/board/ids.ts";
import { type FaultName, isSameFault, nameOfFault } from "../../shared/electrical/fault-name.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import { refuse } from "../refusal.ts";
import type { AttemptRun } from "./attempt-run.ts";
import type { AttemptState } from "./attempt-state.ts";
import { setFaults } from "./hunt-state.ts";

/** As many as the hardest hunt that is drawn, and as many again: more is no circuit any more. */
export const mostFaults = 4;

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

/** Why a fault cannot be hidden in what is wired now; undefined where it can. */
export function whyNotHidden(run: AttemptRun, fault: HiddenFault): Refusal | undefined {
  const { state } = run;
  if (state.status !== "open") return refuse("frozen");
  if (isTested(state)) return refuse("already-tested");
  const sizes = new Map(
    fault.kind === "wrong-cpc"
      ? run.picture.wiring().cables.map(({ from, to, csaMm2 }) => [cableId(from, to), csaMm2] as const)
      : [],
  );
  const cables = run.cables.map(({ id }) => ({ id, csaMm2: sizes.get(id) }));
  return whyNotIn(cables, state.hunt?.faults ?? [], fault);
}

/**
 * Why faults cannot be hidden where a task is started the next time, in what is there to find; undefined where they can.
 * What the task itself hides counts with them.
 */
export function whyNotHiddenNext(
  { asFound, hiddenFaults = [] }: Pick<Scenario, "asFound" | "hiddenFaults">,
  faults: readonly HiddenFault[],
): Refusal | undefined {
  const cables = asFound.cables.map(({ from, to, csaMm2 }) => ({ id: cableId(from, to), csaMm2 }));
  return faults
    .map((fault, at) => whyNotIn(cables, [...hiddenFaults, ...faults.slice(0, at)], fault))
    .find((refused) => refused !== undefined);
}

/**
 * It has to lie where it does something: in a cable that is in, at a station where two cables meet, with cores that are
 * two, and a cpc that is thinner than it was; and not be there yet.
 */
function whyNotIn(
  cables: readonly { id: CableId; csaMm2?: number | undefined }[],
  faults: readonly HiddenFault[],
  fault: HiddenFault,
): Refusal | undefined {
  if (faults.length >= mostFaults) return refuse("all-hidden", { count: mostFaults });
  if (faults.some((one) => isSameFault(nameOfFault(one), nameOfFault(fault)))) return refuse("in-use");
  if (fault.kind === "missing-link") {
    const ends = cables.flatMap(({ id }) => endsOfCable(id).map(stationOf));
    return ends.filter((station) => station === fault.station).length > 1
      ? undefined
      : refuse("no-such-place");
  }
  const cable = cables.find(({ id }) => id === fault.cable);
  if (!cable) return refuse("no-such-cable");
  if (fault.kind === "wrong-cpc")
    return fault.cpcCsaMm2 < (cable.csaMm2 ?? 0) ? undefined : refuse("not-a-choice");
  const [one, two] =
    fault.kind === "crossed-cores" ? fault.roles : fault.kind === "low-insulation" ? fault.between : [];
  return one !== undefined && one === two ? refuse("not-a-choice") : undefined;
}
