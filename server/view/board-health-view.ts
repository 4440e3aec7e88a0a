import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { BoardHealthView } from "../../shared/protocol/bench-view.ts";
import type { BenchCore } from "../bench/bench-core.ts";

/** Faults that are sensed now, and those of the self-check about what none of them is about. */
function allFaults(now: readonly BoardFault[], found: readonly BoardFault[]): BoardFault[] {
  const told = new Set(now.flatMap(({ contacts }) => contacts));
  const kinds = new Set(now.filter(({ contacts }) => contacts.length === 0).map(({ kind }) => kind));
  const isTold = ({ kind, contacts }: BoardFault): boolean =>
    contacts.length === 0 ? kinds.has(kind) : contacts.every((contact) => told.has(contact));
  return [...now, ...found.filter((fault) => !isTold(fault))];
}

/** What the tools for the health of the board have found; undefined where none was used and nothing is wrong. */
export function boardHealthView({ board, parts }: BenchCore): BoardHealthView | undefined {
  const { selfCheck, walk, lead } = board;
  const faults = allFaults(board.isReady ? (board.sensed?.faults ?? []) : [], board.selfCheckFaults);
  if (!selfCheck && !walk && !lead && faults.length === 0) return undefined;
  const sizeOf = (code: number) => parts.board.codes?.find((one) => one.code === code)?.csaMm2;
  return {
    ...(selfCheck ? { selfCheck } : {}),
    ...(walk ? { walk: { ...walk, touched: [...walk.touched] } } : {}),
    ...(lead
      ? {
          lead: {
            entryA: lead.entryA,
            entryB: lead.entryB,
            joined: lead.joined,
            open: lead.open,
            codes: lead.codes.map(({ entry, code }) => {
              const csaMm2 = sizeOf(code);
              return { entry, code, ...(csaMm2 === undefined ? {} : { csaMm2 }) };
            }),
          },
        }
      : {}),
    faults,
  };
}
