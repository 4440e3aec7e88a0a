import express, { type Express, type NextFunction, type Request, type Response } from "express";
import helmet from "helmet";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { answerWith, say } from "../web/answers.ts";
import { batchLimits, batchSchema, signatureHeader, type Taken } from "./centre-messages.schema.ts";
import type { CentreStore } from "./centre-store.ts";

export const rowsPath = "/centre/rows";

function readJson(body: unknown): unknown {
  if (!Buffer.isBuffer(body)) return undefined;
  try {
    return JSON.parse(body.toString("utf8")) as unknown;
  } catch {
    return undefined;
  }
}

async function takeFrom(store: CentreStore, request: Request): Promise<Taken> {
  const parsed = parseSafely(batchSchema, readJson(request.body));
  if (!parsed.success) return { what: "refused", why: "no-batch" };
  const batch = parsed.data;
  const signature = request.get(signatureHeader) ?? "";
  const isSigned = await store.isSigned(batch.benchId, request.body as Buffer, signature);
  if (isSigned === "unknown-bench") return { what: "refused", why: "unknown-bench" };
  if (isSigned === "no") return { what: "refused", why: "not-signed" };
  return store.take(batch);
}

/**
 * What the centre answers over HTTP: batches of the benches on its list, each signed by its bench. An answer of 200 says
 * what became of a batch; any other status says that nothing is known, and that it is to be sent again.
 */
export function centreApp(store: CentreStore, note: (sentence: string) => void): Express {
  const app = express();
  app.disable("x-powered-by");
  app.use(helmet());
  app.post(
    rowsPath,
    express.raw({ type: () => true, limit: batchLimits.bytes }),
    (request, response, next) => {
      takeFrom(store, request).then((taken) => answerWith(response, taken), next);
    },
  );
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
