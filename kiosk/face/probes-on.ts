import type { ContactId } from "../../shared/board/ids.ts";
import type { MeterView } from "../../shared/protocol/test-view.ts";

/** The probes of the meter that stand on a contact, the red one first; none where no meter is out. */
export const probesOn = (
  meter: Pick<MeterView, "red" | "black"> | undefined,
  contact: ContactId,
): ("red" | "black")[] => (["red", "black"] as const).filter((probe) => meter?.[probe] === contact);
