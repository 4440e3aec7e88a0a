import type { EventType } from "../../shared/protocol/log-row.ts";

/** What the bench signs: work that is handed in, and what was decided on it. */
export const isSigned = (type: EventType): boolean => type === "handed-in" || type === "decision-sealed";
