import { dirname } from "node:path";
import { type Response, raw, Router } from "express";
import { z } from "zod";
import {
  type BadgesView,
  type ClassListView,
  type CriteriaView,
  keepData,
  noAdjustments,
  type PeopleView,
} from "../../shared/protocol/keep-view.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { authorOf } from "../acts/actor.ts";
import { bytesOfCriteria } from "../desk/criteria.ts";
import { criteriaOf, criteriaPath, criteriaView, largestCriteriaBytes } from "../desk/criteria-file.ts";
import { largestListBytes, readClassList } from "../people/class-list.ts";
import { refusalOfPin } from "../people/people.ts";
import { writeWhole } from "../store/write-whole.ts";
import { answerWith, bytesOf, say } from "../web/answers.ts";
import type { KeepParts, OnlyFor } from "./keep-parts.ts";

const badgesSchema = z.strictObject({ people: z.array(z.string().min(1).max(64)).min(1).max(200) });
const largestAskBytes = 16 * 1024;

function peopleView({ core, keepYears, due }: KeepParts): PeopleView {
  const { people } = core.parts;
  const dueSince = new Map(due().map(({ id, lastWallMs }) => [id, lastWallMs]));
  return {
    isDemonstration: people.isDemonstration,
    keepYears,
    learners: people.list.learners().map(({ id, name, centreNumber, isHeld, hasBadge, adjustments }) => ({
      ...{ id, name, centreNumber, isHeld, hasBadge },
      dueSinceWallMs: dueSince.get(id) ?? null,
      adjustments: adjustments ?? noAdjustments,
    })),
  };
}

/** People and what they are judged by: the list, a class from a file with a preview, badges, criteria. */
export function peopleRoutes(parts: KeepParts, only: OnlyFor): Router {
  const { core, machine, staffOf, actorOf } = parts;
  const { people } = core.parts;
  const router = Router();
  const keepers = only("trainer", "technician");
  const readers = only("trainer", "assessor", "verifier", "technician");
  const isBusy = (response: Response): void =>
    say(response, 503, "Too many people are signing in just now. Nothing was changed: try again.");
  /** The bytes that are sent; one more than is read, so that what is too large says so itself. */
  const bytes = (limit: number) => raw({ type: () => true, limit: limit + 1 });

  router.get(`${keepData}/people`, keepers, (_request, response) => answerWith(response, peopleView(parts)));

  router.get(`${keepData}/class-list.csv`, keepers, (_request, response) => {
    response.set("Cache-Control", "no-store").attachment("class-list.csv").type("text/csv");
    response.send(people.list.classList());
  });

  // With `?try=1` nothing is changed: what would come in is shown, or every line that stands against it.
  router.post(`${keepData}/class-list`, keepers, bytes(largestListBytes), async (request, response) => {
    if (people.isDemonstration)
      return say(response, 409, "The people of this bench are invented. Set up its first person.");
    const list = readClassList(bytesOf(request));
    if (!list.ok)
      return answerWith(response, { learners: [], faults: list.faults } satisfies ClassListView, 422);
    const isTried = request.query["try"] !== undefined;
    const done = await (
      isTried
        ? people.list.checkClass(list.learners).then((faults) => ({ faults }))
        : people.list.addClass(list.learners, authorOf(actorOf(request)))
    ).catch(refusalOfPin);
    if ("ok" in done) return isBusy(response);
    const faults = "faults" in done ? done.faults : [];
    const learners = faults.length > 0 ? [] : list.learners;
    const told = learners.map(({ line, name, centreNumber, badge }) => ({
      ...{ line, name, centreNumber },
      hasBadge: badge !== undefined,
    }));
    answerWith(response, { learners: told, faults } satisfies ClassListView, faults.length > 0 ? 422 : 200);
  });

  router.post(`${keepData}/badges`, keepers, bytes(largestAskBytes), async (request, response) => {
    let asked: unknown;
    try {
      asked = JSON.parse(Buffer.from(bytesOf(request)).toString("utf8"));
    } catch {
      asked = undefined;
    }
    const parsed = parseSafely(badgesSchema, asked);
    if (!parsed.success) return say(response, 400, "These are no people.");
    const given = await people.list
      .giveBadges(parsed.data.people, authorOf(actorOf(request)))
      .catch(refusalOfPin);
    if (!("ok" in given)) return answerWith(response, { badges: given } satisfies BadgesView);
    if (given.code === "too-fast") return isBusy(response);
    say(response, 404, "Somebody of these is not on the list any more. No badge was made.");
  });

  router.get(`${keepData}/criteria`, readers, (_request, response) =>
    answerWith(response, criteriaView(core.parts.criteria)),
  );

  router.get(`${keepData}/criteria.json`, readers, (_request, response) => {
    response.set("Cache-Control", "no-store").attachment("criteria.json").type("application/json");
    response.send(`${JSON.stringify(core.parts.criteria, undefined, 2)}\n`);
  });

  router.post(`${keepData}/criteria`, keepers, bytes(largestCriteriaBytes), (request, response) => {
    if (bytesOf(request).length > largestCriteriaBytes)
      return say(response, 413, "The file is larger than 256 kB.");
    const read = criteriaOf(bytesOf(request));
    if ("faults" in read)
      return answerWith(
        response,
        { title: { en: "", pl: "" }, criteria: [], faults: read.faults } satisfies CriteriaView,
        422,
      );
    const { records } = core.parts;
    if (request.query["try"] === undefined) {
      if (!records) return say(response, 503, "The records of this bench are damaged.");
      const criteria = records.log.keepDocument("criteria", bytesOfCriteria(read.criteria));
      const content = { person: staffOf(request)?.id ?? "", criteria };
      const author = authorOf(actorOf(request));
      records.log.append([{ attemptId: null, type: "criteria-chosen", author, content }]);
      writeWhole(
        criteriaPath(dirname(machine.databasePath)),
        `${JSON.stringify(read.criteria, undefined, 2)}\n`,
      );
      core.parts.criteria = read.criteria;
    }
    answerWith(response, criteriaView(read.criteria));
  });
  return router;
}
