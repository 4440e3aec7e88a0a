import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { isSignatureOf } from "../store/log-signer.ts";
import type { Channel } from "./channel.ts";
import { type FirstOfBench, pairProofSchema } from "./lead-messages.schema.ts";
import type { LinkEnd } from "./link-end.ts";
import type { OrderBy } from "./order-by.ts";
import { agreedOf, isSameProof, plainCode, proofOf, saltOf, signedOfLink } from "./pair-code.ts";
import type { ShownCode } from "./shown-code.ts";

/** What a lead takes a bench into its workshop with. */
export interface TakingEnd extends LinkEnd {
  /** Puts into the log of this bench whom it is paired with, and by whose hand. @throws StoreError */
  log: (type: "bench-paired" | "bench-forgotten", content: object, by: OrderBy) => void;
}

/**
 * The lead's side of a pairing: one who knows the code that is shown here is a bench of this workshop from now on.
 *
 * @throws StoreError where the log or the book cannot be written.
 */
export async function takeBench(
  channel: Channel,
  { benchId, benchKey, name }: Extract<FirstOfBench, { what: "pair" }>,
  lead: TakingEnd,
  shownCode: ShownCode,
): Promise<void> {
  const { signer, pins, book, note, log } = lead;
  const noCode = () => channel.end({ what: "refused", why: "no-code" });
  if (!shownCode.shown) return noCode();
  const ends = { benchId, benchKey, leadId: lead.benchId, leadKey: signer.publicKey };
  channel.send({ what: "lead", leadId: ends.leadId, leadKey: ends.leadKey, name: lead.name });
  const said = parseSafely(pairProofSchema, await channel.next());
  const code = said.success ? shownCode.useTry() : undefined;
  if (!said.success || !code) return noCode();
  const agreed = agreedOf(channel.binding, ends);
  const stretched = await pins.badgeMark(plainCode(code.text), saltOf(agreed));
  const isRight =
    isSameProof(said.data.proof, proofOf(stretched, "bench", agreed)) &&
    isSignatureOf(benchKey, signedOfLink("pair", "bench", agreed), said.data.signature);
  if (!isRight) {
    note(`lead: a bench at ${channel.address} gave another pairing code`);
    return channel.end({ what: "refused", why: "wrong-code" });
  }
  if (code.isUsed) return noCode();
  log("bench-paired", { bench: benchId, benchKey, name }, code.by);
  book.keepBench({ id: benchId, name, publicKey: benchKey });
  shownCode.useUp(code);
  channel.end({
    what: "proof",
    proof: proofOf(stretched, "lead", agreed),
    signature: signer.signatureOf(signedOfLink("pair", "lead", agreed)),
  });
}
