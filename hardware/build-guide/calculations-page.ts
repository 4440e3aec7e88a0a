import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { calculations, isKept } from "./calculations.ts";
import { made, table } from "./tables.ts";

/** Every level, current and time of a board with its limit beside it, as a page. */
export const calculationsPage = (board: BoardDescription): string =>
  [
    `# ${board.name}: calculations`,
    made(board),
    "Values of parts are in `component-values.ts`. Limits are from memory of common data sheets: hold them to the sheets of " +
      "the parts you buy. Nothing here was measured.",
    table(
      ["what", "how", "value", "limit", "whose limit", ""],
      calculations(board).map((each) => [
        each.what,
        each.how,
        `${each.value.toFixed(2)} ${each.unit}`,
        `${each.limit.bound} ${each.limit.value.toFixed(2)} ${each.unit}`,
        each.limit.source,
        isKept(each) ? "kept" : "**BROKEN**",
      ]),
    ),
    "",
  ].join("\n\n");
