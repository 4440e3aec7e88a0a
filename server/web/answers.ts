import type { Request, Response } from "express";

/** Answers with a sentence. */
export const say = (response: Response, status: number, sentence: string): void =>
  void response.status(status).type("text/plain").send(`${sentence}\n`);

/** Answers with data that nobody keeps. */
export const answerWith = (response: Response, found: object, status = 200): void =>
  void response.status(status).set("Cache-Control", "no-store").json(found);

/** The bytes that were sent, as `raw` leaves them; none where nothing was. */
export function bytesOf(request: Request): Buffer {
  const body: unknown = request.body;
  return Buffer.isBuffer(body) ? body : Buffer.alloc(0);
}
