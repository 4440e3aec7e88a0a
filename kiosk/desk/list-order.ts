import type { ListColumn } from "../../shared/protocol/desk-view.ts";

/** What a table of attempts is put in order by, and whether it goes up. */
export interface ListOrder {
  by: ListColumn;
  isUp: boolean;
}
