import { type Taken, signatureHeader, takenSchema } from "../centre/centre-messages.schema.ts";

/** Sends a batch to the centre; gives what became of it. Rejects where that is not known. */
export type CentreLink = (body: Uint8Array, signature: string) => Promise<Taken>;

/** An answer that is not there by then does not come. */
const longestMs = 60_000;

/** A link to a centre by its address, over HTTP. */
export const centreLink =
  (address: string, timeoutMs = longestMs): CentreLink =>
  async (body, signature) => {
    const response = await fetch(new URL("/centre/rows", address), {
      method: "POST",
      headers: { "content-type": "application/json", [signatureHeader]: signature },
      body: body.slice(),
      signal: AbortSignal.timeout(timeoutMs),
    });
    if (response.status !== 200) throw new Error(`the centre answered ${response.status}`);
    return takenSchema.parse(await response.json());
  };
