import type { Timers } from "../clock/clock.ts";
import type { PinHasher } from "../people/pin-hash.ts";
import type { LogSigner } from "../store/log-signer.ts";
import type { LeadBook } from "./lead-book.ts";

/** What a bench is at an end of the link between a lead and those it leads, at either. */
export interface LinkEnd {
  book: LeadBook;
  benchId: string;
  name: string;
  signer: Pick<LogSigner, "publicKey" | "signatureOf">;
  pins: Pick<PinHasher, "badgeMark">;
  timers: Timers;
  note: (sentence: string) => void;
}
