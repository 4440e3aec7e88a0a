import express, { type Express, type NextFunction, type Request, type Response } from "express";
import helmet from "helmet";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { answerWith, say } from "../web/answers.ts";
import type { z } from "zod";
import {
  batchLimits,
  batchSchema,
  peoplePath,
  peopleSchema,
  rowsPath,
  signatureHeader,
  type PeopleKept,
  type Taken,
} from "./centre-messages.schema.ts";
import type { CentrePeople } from "./centre-people.ts";
import type { CentreStore } from "./centre-store.ts";

function readJson(body: unknown): unknown {
  if (!Buffer.isBuffer(body)) return undefined;
  try {
    return JSON.parse(body.toString("utf8")) as unknown;
  } catch {
    return undefined;
  }
}

/** What a bench sent and signed; why not, where it is not that. */
async function signedBy<Message extends { benchId: string }>(
  store: CentreStore,
  schema: z.ZodType<Message>,
  request: Request,
): Promise<Message | "no-message" | "unknown-bench" | "not-signed"> {
  const parsed = parseSafely(schema, readJson(request.body));
  if (!parsed.success) return "no-message";
  const signature = request.get(signatureHeader) ?? "";
  const isSigned = await store.isSigned(parsed.data.benchId, request.body as Buffer, signature);
  if (isSigned === "unknown-bench") return isSigned;
  return isSigned === "yes" ? parsed.data : "not-signed";
}

async function takeRows(store: CentreStore, request: Request): Promise<Taken> {
  const batch = await signedBy(store, batchSchema, request);
  if (typeof batch !== "string") return store.take(batch);
  return { what: "refused", why: batch === "no-message" ? "no-batch" : batch };
}

async function takePeople(store: CentreStore, people: CentrePeople, request: Request): Promise<PeopleKept> {
  const list = await signedBy(store, peopleSchema, request);
  if (typeof list !== "string") return people.take(list);
  return { what: "refused", why: list === "no-message" ? "no-list" : list };
}

/**
 * What the centre answers over HTTP: batches of the benches on its list and their lists of people, each signed by its bench.
 * An answer of 200 says what became of it; any other status says that nothing is known, and that it is to be sent again.
 */
export function centreApp(
  store: CentreStore,
  people: CentrePeople,
  note: (sentence: string) => void,
): Express {
  const app = express();
  app.disable("x-powered-by");
  app.use(helmet());
  const body = express.raw({ type: () => true, limit: batchLimits.bytes });
  app.post(rowsPath, body, (request, response, next) => {
    takeRows(store, request).then((taken) => answerWith(response, taken), next);
  });
  app.post(peoplePath, body, (request, response, next) => {
    takePeople(store, people, request).then((kept) => answerWith(response, kept), next);
  });
  app.use((_, response) => say(response, 404, "There is no such page at the centre."));
  app.use((error: unknown, _request: Request, response: Response, _next: NextFunction) => {
    const { status = 500, message } = error as { status?: number; message?: string };
    if (status >= 500) note(`a batch could not be taken: ${message ?? String(error)}`);
    say(
      response,
      status >= 500 ? 503 : status,
      status >= 500 ? "The store is not there now." : "That is no batch.",
    );
  });
  return app;
}
