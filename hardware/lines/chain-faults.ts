import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { ChainCheck } from "../health/chain-check.ts";

/** What the check of a chain says of the board; nothing where its lines can be read. */
export function chainFaults(check: ChainCheck): BoardFault[] {
  switch (check.kind) {
    case "sound":
    case "no-loop":
      // A board without the tie, or whose outputs are cut: then its lines say so themselves.
      return [];
    case "open-chain":
      return [{ kind: "open-chain", contacts: [], facts: { inputChipCount: check.inputChipCount } }];
    case "wrong-length": {
      const { outputChipCount, inputChipCount, expectedChipCount } = check;
      return [
        { kind: "wrong-length", contacts: [], facts: { outputChipCount, inputChipCount, expectedChipCount } },
      ];
    }
    case "swapped-pins":
      return [
        {
          kind: "swapped-pins",
          contacts: [],
          facts: { swaps: check.swaps.map(({ signal, pin }) => `${signal} on ${pin}`).join(", ") },
        },
      ];
    case "no-answer":
      return [{ kind: "no-board", contacts: [], facts: { level: check.level } }];
  }
}
