import type { z } from "zod";
import {
  type PeopleKept,
  peopleKeptSchema,
  peoplePath,
  rowsPath,
  signatureHeader,
  type Taken,
  takenSchema,
} from "../centre/centre-messages.schema.ts";

/** Sends something signed to the centre; gives what became of it. Rejects where that is not known. */
type Post<Answer> = (body: Uint8Array, signature: string) => Promise<Answer>;
export type CentreLink = Post<Taken>;
export type PeopleLink = Post<PeopleKept>;

/** An answer that is not there by then does not come. */
const longestMs = 60_000;

const post =
  <Answer>(path: string, answer: z.ZodType<Answer>, address: string, timeoutMs: number): Post<Answer> =>
  async (body, signature) => {
    const response = await fetch(new URL(path, address), {
      method: "POST",
      headers: { "content-type": "application/json", [signatureHeader]: signature },
      body: body.slice(),
      signal: AbortSignal.timeout(timeoutMs),
    });
    if (response.status !== 200) throw new Error(`the centre answered ${response.status}`);
    return answer.parse(await response.json());
  };

/** A link to a centre by its address, over HTTP, for the rows of the log. */
export const centreLink = (address: string, timeoutMs = longestMs): CentreLink =>
  post(rowsPath, takenSchema, address, timeoutMs);

/** The same for the list of people. */
export const peopleLink = (address: string, timeoutMs = longestMs): PeopleLink =>
  post(peoplePath, peopleKeptSchema, address, timeoutMs);
