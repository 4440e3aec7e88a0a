import { byId, type EntryId } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { DoubtfulLeads } from "../health/doubtful-leads.ts";
import type { SensedBoard } from "./sensed-board.ts";

/**
 * What is sensed, with the leads in doubt told as faults. They stay in the picture, so that it can be seen which lead
 * is meant, and are held against nobody.
 */
export function doubtedBoard(sensed: SensedBoard, doubtful: DoubtfulLeads, nowMs: number): SensedBoard {
  const dead = sensed.faults.filter(({ kind }) => kind === "dead-output");
  const doubts = doubtful.look(
    {
      ...sensed,
      codes: [...sensed.codes, ...plugsAtFault(sensed.faults)],
      deadOutputs: new Set(dead.flatMap(({ contacts }) => contacts)),
    },
    nowMs,
  );
  if (doubts.length === 0) return sensed;
  const doubted = doubts.flatMap(({ contacts }) => contacts);
  return {
    ...sensed,
    unknown: [...new Set([...sensed.unknown, ...doubted])].sort(byId),
    faults: [
      ...sensed.faults,
      ...doubts.map(({ contacts, reason }): BoardFault => ({
        kind: "doubtful-lead",
        contacts,
        facts: { reason },
      })),
    ],
  };
}

/** Entries with a plug in them whose code is not to be believed: it is a plug all the same. */
const plugsAtFault = (faults: readonly BoardFault[]): { entry: EntryId }[] =>
  faults
    .filter(({ kind }) => kind === "unknown-code" || kind === "codes-differ")
    .flatMap(({ facts = {} }) => [facts["entry"], facts["entryA"], facts["entryB"]])
    .flatMap((entry) => (typeof entry === "string" ? [{ entry: entry as EntryId }] : []));
