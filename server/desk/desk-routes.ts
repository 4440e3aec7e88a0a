import { type NextFunction, type Request, type Response, Router } from "express";
import { deskData, type DeskList } from "../../shared/protocol/desk-view.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Staff } from "../people/person.ts";
import type { AttemptCursor } from "../store/attempt-reader.ts";
import { type DeskQuery, filterOf, readDeskQuery } from "./attempt-query.ts";
import { deskLive } from "./desk-live.ts";
import { deskRecord, replayed } from "./desk-record.ts";
import { deskRow } from "./desk-rows.ts";
import { evidenceReaders } from "../evidence/export.ts";
import { languageAsked } from "../web/language-asked.ts";
import { momentView } from "./replay.ts";

export interface DeskParts {
  core: BenchCore;
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
  /** The door is that of the bench's own screen. */
  isAtBench: boolean;
}

const pageSize = 50;

const cursorText = ({ benchId, startBoot, startSequence }: AttemptCursor): string =>
  `${benchId}.${startBoot}.${startSequence}`;

function cursorOf(text: string | undefined): AttemptCursor | undefined {
  const [, benchId = "", boot, sequence] = /^([\w-]+)\.(\d+)\.(\d+)$/.exec(text ?? "") ?? [];
  return boot === undefined
    ? undefined
    : { benchId, startBoot: Number(boot), startSequence: Number(sequence) };
}

function listOf({ parts }: BenchCore, query: DeskQuery): DeskList | undefined {
  const { records, people, scenarios } = parts;
  if (!records) return undefined;
  const page = records.attempts.page(filterOf(query, people), pageSize, cursorOf(query.after));
  return {
    attempts: page.attempts.map((record) => deskRow(parts, record)),
    ...(page.next ? { next: cursorText(page.next) } : {}),
    scenarios: [...scenarios.kits.values()].map(({ scenario: { id, title } }) => ({ id, title })),
  };
}

/** What the desk shows, for whoever judges attempts or checks how they were judged; it changes nothing. */
export function deskRoutes({ core, staffOf, isAtBench }: DeskParts): Router {
  const router = Router();
  const answer = (response: Response, found: object | undefined): void => {
    if (!found) return void response.status(404).type("text/plain").send("There is no such piece of work.\n");
    response.set("Cache-Control", "no-store").json(found);
  };
  const reader = (request: Request): Staff | undefined => {
    const staff = staffOf(request);
    return staff && evidenceReaders.includes(staff.role) ? staff : undefined;
  };
  router.use(deskData, (request: Request, response: Response, next: NextFunction) => {
    if (reader(request)) return next();
    const isKnown = staffOf(request) !== undefined;
    response
      .status(isKnown ? 403 : 401)
      .type("text/plain")
      .send(isKnown ? "This is not for you.\n" : "Sign in first.\n");
  });
  router.get(`${deskData}/live`, (request, response) => {
    const me = reader(request);
    answer(response, me && deskLive(core, me, isAtBench, languageAsked(request)));
  });
  router.get(`${deskData}/attempts`, (request, response) => {
    const query = readDeskQuery(request.query);
    if (!query) return void response.status(400).type("text/plain").send("This is no list of attempts.\n");
    answer(response, listOf(core, query));
  });
  router.get(`${deskData}/attempts/:attempt`, (request, response) => {
    const me = reader(request);
    const isBlind = request.query["blind"] !== undefined;
    answer(response, me && deskRecord(core, request.params.attempt, me, isBlind));
  });
  router.get(`${deskData}/attempts/:attempt/moments/:at`, (request, response) => {
    const { attempt, at } = request.params;
    const found = replayed(core, attempt);
    const view = found && momentView(found.parts, attempt, found.rows, Number(at), languageAsked(request));
    answer(response, view);
  });
  return router;
}
