import { type Request, type Response, raw, Router } from "express";
import {
  type BoardStationView,
  type DraftView,
  ownScenarioPrefix,
  type OwnScenarioState,
  ownScenarioStates,
  type PrepareView,
  type WiredView,
} from "../../shared/protocol/author-view.ts";
import { keepData } from "../../shared/protocol/keep-view.ts";
import { readDraft } from "../../shared/scenario/read-draft.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import type { FieldProblem } from "../../shared/reading/problem.ts";
import type { FileFault } from "../../shared/protocol/keep-view.ts";
import { defaults } from "../../shared/circuit/defaults.ts";
import { firstFree } from "../../shared/text/first-free.ts";
import { lineOfField } from "../files/line-of.ts";
import { authorOf } from "../acts/actor.ts";
import { builtOf } from "../attempt/settings.ts";
import type { KeepParts, OnlyFor } from "../keep/keep-parts.ts";
import { scenarioKit } from "../library.ts";
import { answerWith, bytesOf, say } from "../web/answers.ts";
import { languageAsked } from "../web/language-asked.ts";
import { checkDraft } from "./check-draft.ts";

/** A scenario of ours is 10 to 20 kB. */
const largestDraftBytes = 256 * 1024;

const prepare = `${keepData}/prepare`;

const notWritten = "The records of this bench cannot be written just now. Nothing was changed.";

/** Scenarios made at this bench: for a trainer, who prepares them from the desk. */
export function authorRoutes(parts: KeepParts, only: OnlyFor): Router {
  const { core, staffOf, actorOf } = parts;
  const { board, judge, scenarios } = core.parts;
  const router = Router();
  const trainers = only("trainer");
  const draftBytes = raw({ type: () => true, limit: largestDraftBytes + 1 });

  router.get(prepare, trainers, (_request, response) =>
    answerWith(response, {
      scenarios: scenarios.rows(),
      stations: board.stations.map(({ id, kind, label, entries, settings = {} }): BoardStationView => {
        const counts: BoardStationView["entries"] = {};
        for (const { side } of entries) counts[side] = (counts[side] ?? 0) + 1;
        return { id, kind, label, entries: counts, settings };
      }),
      usualZeOhm: defaults.zeOhm,
    } satisfies PrepareView),
  );

  router.get(`${prepare}/scenario`, trainers, (request, response) => {
    const own = ownAsked(request);
    if (!own) return say(response, 404, "There is no such scenario of this bench.");
    if (request.query["save"] !== undefined)
      response.attachment(`${own.kit.scenario.id}.json`).type("application/json");
    response.set("Cache-Control", "no-store").send(Buffer.from(own.kit.bytes));
  });

  /** What is wired now for the scenario that is being made: an answer as it stands in its file. */
  router.get(`${prepare}/wired`, trainers, (request, response) => {
    const { run } = core.work;
    if (!run || run.state.scenario !== request.query["id"] || run.state.mode !== "practice")
      return say(response, 409, "Nobody works on this scenario at the bench.");
    const chosenAt = new Map<string, readonly string[]>(
      run.kit.scenario.stations.map(({ id, chosen = [] }) => [id, chosen]),
    );
    const { settings = {}, cables } = builtOf(run.kit.stripped, run.cables, run.settings);
    const kept = Object.entries(settings).flatMap(([id, values]) => {
      const own = Object.entries(values).filter(([key]) => chosenAt.get(id)?.includes(key));
      return own.length > 0 ? [[id, Object.fromEntries(own)] as const] : [];
    });
    const built = { ...(kept.length > 0 ? { settings: Object.fromEntries(kept) } : {}), cables };
    answerWith(response, { built } satisfies WiredView);
  });

  router.post(`${prepare}/check`, trainers, draftBytes, (request, response) => {
    const draft = draftIn(request, response);
    if (draft) answerWith(response, viewOf(draft, request));
  });

  /** With `?try=1` nothing is kept; `state` says what it is to be. */
  router.post(`${prepare}/keep`, trainers, draftBytes, (request, response) => {
    const state = stateAsked(request);
    const draft = draftIn(request, response);
    if (!draft) return;
    if (!draft.id.startsWith(ownScenarioPrefix))
      return say(response, 422, `The id of a scenario made here begins with "${ownScenarioPrefix}".`);
    const view = viewOf(draft, request);
    const { scenario, lacks, problems } = view;
    if (!scenario || (state === "offered" && lacks.length + problems.length > 0))
      return answerWith(response, view, 422);
    if (request.query["try"] !== undefined) return answerWith(response, view);
    keep(request, response, scenario, state, view);
  });

  /** A file of a scenario comes in as a draft, under an id that no other has; with `?try=1` it is only shown. */
  router.post(`${prepare}/import`, trainers, draftBytes, (request, response) => {
    const sent = readIn(request, response);
    if (!sent) return;
    const { read, text } = sent;
    if (!read.ok)
      return answerWith(response, { ...unread(read.problems), faults: faultsOf(read.problems, text) }, 422);
    const scenario = { ...read.value, id: freeId(read.value.id) };
    const view = { ...viewOf(scenario, request), faults: [] };
    if (request.query["try"] !== undefined) return answerWith(response, view);
    keep(request, response, scenario, "draft", view);
  });

  router.post(`${prepare}/withdraw`, trainers, (request, response) => {
    const own = ownAsked(request);
    if (!own) return say(response, 404, "There is no such scenario of this bench.");
    const { id, revision } = own.kit.scenario;
    core.health.guard(() => {
      record(request, "scenario-withdrawn", { scenario: id, revision });
      scenarios.withdraw(id);
    });
    if (scenarios.own.has(id)) return say(response, 503, notWritten);
    core.publish();
    answerWith(response, { scenarios: scenarios.rows() });
  });

  const keep = (
    request: Request,
    response: Response,
    scenario: Scenario,
    state: OwnScenarioState,
    view: DraftView,
  ): void => {
    const { records } = core.parts;
    if (!records) return say(response, 503, "The records of this bench are damaged.");
    const before = scenarios.own.get(scenario.id);
    const kept = renewed(scenario, before?.kit.scenario);
    const kit = scenarioKit(Buffer.from(JSON.stringify(kept), "utf8"), `${kept.id}.json`);
    if ("problems" in kit) return answerWith(response, { ...view, problems: kit.problems }, 422);
    let isKept = false;
    core.health.guard(() => {
      const hash = records.log.keepDocument("scenario", kit.bytes);
      record(request, "scenario-kept", { scenario: kept.id, revision: kept.revision, hash, state });
      scenarios.keep(kit, { hash, state });
      isKept = true;
    });
    if (!isKept) return say(response, 503, notWritten);
    core.publish();
    answerWith(response, { ...view, scenario: kept });
  };

  /** The id of what comes in from elsewhere, changed where a scenario of this bench has it already. */
  const freeId = (wanted: string): string => {
    const base = wanted.startsWith(ownScenarioPrefix) ? wanted : `${ownScenarioPrefix}${wanted}`;
    return firstFree(base, (id) => scenarios.own.has(id));
  };

  const ownAsked = ({ query: { id } }: Request) =>
    typeof id === "string" ? scenarios.own.get(id) : undefined;

  const record = (
    request: Request,
    type: "scenario-kept" | "scenario-withdrawn",
    content: Record<string, unknown>,
  ): void => {
    const person = staffOf(request)?.id ?? "";
    core.parts.records?.log.append([
      { attemptId: null, type, author: authorOf(actorOf(request)), content: { person, ...content } },
    ]);
  };

  const viewOf = (draft: Scenario, request: Request): DraftView =>
    checkDraft(draft, { board, judge, language: languageAsked(request) });

  /** What was sent, read as a draft; says that it is too large where it is. */
  const readIn = (request: Request, response: Response) => {
    const bytes = bytesOf(request);
    if (bytes.length > largestDraftBytes) {
      say(response, 413, "The scenario is larger than 256 kB.");
      return undefined;
    }
    const text = bytes.toString("utf8");
    return { text, read: readDraft(text, "scenario") };
  };

  /** The draft that was sent; otherwise says what is wrong with it. */
  const draftIn = (request: Request, response: Response): Scenario | undefined => {
    const read = readIn(request, response)?.read;
    if (read?.ok) return read.value;
    if (read) answerWith(response, unread(read.problems), 422);
    return undefined;
  };
  return router;
}

const stateAsked = ({ query }: Request): OwnScenarioState =>
  ownScenarioStates.find((one) => one === query["state"]) ?? "draft";

/** Its revision counts up where it is no longer what was kept. */
function renewed(scenario: Scenario, before: Scenario | undefined): Scenario {
  if (!before) return { ...scenario, revision: 1 };
  const isSame = JSON.stringify({ ...scenario, revision: 0 }) === JSON.stringify({ ...before, revision: 0 });
  return { ...scenario, revision: isSame ? before.revision : before.revision + 1 };
}

const unread = (problems: DraftView["problems"]): DraftView => ({
  scenario: null,
  lacks: [],
  problems,
  asked: [],
  answers: [],
});

/** What stands against a file, each at the line of it where that can be told, else at the first. */
const faultsOf = (problems: readonly FieldProblem[], text: string): FileFault[] =>
  problems.map(({ field, message, remedy }) => {
    const stated = /^line (\d+), column \d+$/.exec(field)?.[1];
    const line = stated ? Number(stated) : lineOfField(text, field);
    return { line, message: `${field}: ${message}. ${remedy}` };
  });
