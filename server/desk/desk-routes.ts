import { type NextFunction, type Request, type Response, Router } from "express";
import type { Author } from "../../shared/protocol/author.ts";
import { deskData, type DeskList } from "../../shared/protocol/desk-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Staff } from "../people/person.ts";
import type { AttemptCursor } from "../store/attempt-order.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import { type DeskQuery, filterOf, readDeskQuery } from "./attempt-query.ts";
import { deskLive } from "./desk-live.ts";
import { deskRecord, replayed } from "./desk-record.ts";
import { rowFor } from "./desk-rows.ts";
import { evidenceReaders } from "../evidence/export.ts";
import { languageAsked } from "../web/language-asked.ts";
import { momentView } from "./replay.ts";
import type { Viewer } from "./shown-decisions.ts";
import { cursorValue, cursorWith, sortedPage } from "./sorted-page.ts";

export interface DeskParts {
  core: BenchCore;
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
  authorOf: (request: Request) => Author;
  /** The door is that of the bench's own screen. */
  isAtBench: boolean;
}

const pageSize = 50;

/** Where a page ended, with what the column of its order said there; nothing stands for null. */
function cursorText(record: AttemptRecord, { sort }: DeskQuery): string {
  const value = cursorValue(record, sort);
  return [
    record.benchId,
    record.startBoot,
    record.startSequence,
    ...(value === undefined ? [] : [value]),
  ].join(".");
}

function cursorOf({ after, sort }: DeskQuery): AttemptCursor | undefined {
  const [, benchId = "", boot, sequence, value = ""] =
    /^([\w-]+)\.(\d+)\.(\d+)(?:\.([\w-]*))?$/.exec(after ?? "") ?? [];
  if (boot === undefined) return undefined;
  const place = { benchId, startBoot: Number(boot), startSequence: Number(sequence) };
  return cursorWith(place, sort, value === "" ? null : value);
}

function listOf(core: BenchCore, viewer: Viewer, query: DeskQuery, language: Language): DeskList | undefined {
  const { parts } = core;
  const { records, people, scenarios } = parts;
  if (!records) return undefined;
  const { sort: by, order } = query;
  const page = sortedPage(
    parts,
    records.attempts,
    filterOf(query, people),
    pageSize,
    cursorOf(query),
    by && { by, isUp: order === "up", language },
  );
  // A list narrowed or put in order by what was decided tells it.
  if (by === "decision" || (query.decision !== undefined && query.decision !== "none"))
    core.shown.add(viewer, page.attempts);
  return {
    attempts: page.attempts.map((record) => rowFor(core, viewer.staff, record)),
    ...(page.next ? { next: cursorText(page.next, query) } : {}),
    scenarios: [...scenarios.kits.values()].map(({ scenario: { id, title } }) => ({ id, title })),
  };
}

/** What the desk shows, for whoever judges attempts or checks how they were judged; all that it changes is who has seen it. */
export function deskRoutes({ core, staffOf, authorOf, isAtBench }: DeskParts): Router {
  const router = Router();
  const answer = (response: Response, found: object | undefined): void => {
    if (!found) return void response.status(404).type("text/plain").send("There is no such piece of work.\n");
    response.set("Cache-Control", "no-store").json(found);
  };
  const reader = (request: Request): Staff | undefined => {
    const staff = staffOf(request);
    return staff && evidenceReaders.includes(staff.role) ? staff : undefined;
  };
  const viewerOf = (request: Request): Viewer | undefined => {
    const staff = reader(request);
    return staff && { staff, author: authorOf(request) };
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
    const viewer = viewerOf(request);
    answer(response, viewer && listOf(core, viewer, query, languageAsked(request)));
  });
  router.get(`${deskData}/attempts/:attempt`, async (request, response) => {
    const viewer = viewerOf(request);
    const isBlind = request.query["blind"] !== undefined;
    answer(response, viewer && (await deskRecord(core, request.params.attempt, viewer, isBlind)));
  });
  router.get(`${deskData}/attempts/:attempt/moments/:at`, (request, response) => {
    const { attempt, at } = request.params;
    const found = replayed(core, attempt);
    const view = found && momentView(found.parts, attempt, found.rows, Number(at), languageAsked(request));
    answer(response, view);
  });
  return router;
}
