import { type NextFunction, type Request, type Response, Router } from "express";
import type { StaffRole } from "../../shared/protocol/author.ts";
import { keepData, type KeeperView } from "../../shared/protocol/keep-view.ts";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { Actor } from "../acts/actor.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Staff } from "../people/person.ts";
import { type MachineParts, machineView } from "./machine-view.ts";

export interface KeepParts {
  core: BenchCore;
  health: () => Health;
  machine: MachineParts;
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
  actorOf: (request: Request) => Actor;
  /** The door is that of the bench's own screen. */
  isAtBench: boolean;
}

/** What keeps a bench and its people: for the staff alone, each address for those who need it. */
export function keepRoutes({ core, health, machine, staffOf, isAtBench }: KeepParts): Router {
  const router = Router();
  const only =
    (...roles: readonly StaffRole[]) =>
    (request: Request, response: Response, next: NextFunction): void => {
      const staff = staffOf(request);
      // A browser always says where what changes something came from.
      const isFromPage = request.method === "GET" || request.headers.origin !== undefined;
      if (staff && roles.includes(staff.role) && isFromPage) return next();
      response
        .status(staff ? 403 : 401)
        .type("text/plain")
        .send(staff ? "This is not for you.\n" : "Sign in first.\n");
    };
  const answer = (response: Response, found: object): void =>
    void response.set("Cache-Control", "no-store").json(found);

  router.get(`${keepData}/me`, only("trainer", "assessor", "verifier", "technician"), (request, response) => {
    const { id = "", name = "", role = "trainer" } = staffOf(request) ?? {};
    const benchName = `Spurwise ${core.parts.records?.log.benchId.slice(-4) ?? ""}`;
    answer(response, { id, name, role, isAtBench, benchName } satisfies KeeperView);
  });
  router.get(`${keepData}/machine`, only("technician"), (_request, response) =>
    answer(response, machineView(core, health(), machine)),
  );
  return router;
}
