import { Router } from "express";
import { keepData, type KeeperView } from "../../shared/protocol/keep-view.ts";
import { authorRoutes } from "../author/author-routes.ts";
import { benchNameOf } from "../bench/bench-name.ts";
import { answerWith, say } from "../web/answers.ts";
import { languageAsked } from "../web/language-asked.ts";
import { debriefSince } from "./debrief.ts";
import type { KeepParts, OnlyFor } from "./keep-parts.ts";
import { keepingRoutes } from "./keeping-routes.ts";
import { peopleRoutes } from "./people-routes.ts";
import { machineView } from "./machine-view.ts";
import { supportBundle } from "./support-bundle.ts";

/** The morning of a day by the bench's own clock. */
const morningOf = (wallMs: number): number => new Date(wallMs).setHours(0, 0, 0, 0);

/** What keeps a bench and its people: for the staff alone, each address for those who need it. */
export function keepRoutes(parts: KeepParts): Router {
  const { core, health, machine, staffOf, isAtBench } = parts;
  const router = Router();
  const only: OnlyFor =
    (...roles) =>
    (request, response, next) => {
      const staff = staffOf(request);
      // A browser always says where what changes something came from.
      const isFromPage = request.method === "GET" || request.headers.origin !== undefined;
      if (staff && roles.includes(staff.role) && isFromPage) return next();
      if (staff) say(response, 403, "This is not for you.");
      else say(response, 401, "Sign in first.");
    };
  router.get(`${keepData}/me`, only("trainer", "assessor", "verifier", "technician"), (request, response) => {
    const { id = "", name = "", role = "trainer" } = staffOf(request) ?? {};
    const benchName = benchNameOf(core.parts.records?.log.benchId);
    answerWith(response, { id, name, role, isAtBench, benchName } satisfies KeeperView);
  });
  router.get(`${keepData}/machine`, only("technician"), (_request, response) =>
    answerWith(response, machineView(core, health(), machine)),
  );
  router.get(`${keepData}/support.json`, only("technician"), (_request, response) => {
    const bundle = supportBundle(core, health(), machine);
    response.set("Cache-Control", "no-store").attachment("support.json").type("application/json");
    response.send(`${JSON.stringify(bundle, undefined, 2)}\n`);
  });
  router.get(`${keepData}/debrief`, only("trainer", "assessor"), (request, response) => {
    answerWith(response, debriefSince(core, morningOf(core.parts.clock.wallMs()), languageAsked(request)));
  });
  router.use(peopleRoutes(parts, only));
  router.use(keepingRoutes(parts, only));
  router.use(authorRoutes(parts, only));
  return router;
}
