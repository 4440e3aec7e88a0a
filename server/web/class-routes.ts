import { type NextFunction, type Request, type Response, raw, Router } from "express";
import { authorOf, keepers } from "../acts/actor.ts";
import { faultLine } from "../files/csv.ts";
import { largestListBytes, readClassList } from "../people/class-list.ts";
import { type People, refusalOfPin } from "../people/people.ts";
import { type Door, signedInAt } from "./door.ts";

export interface ClassParts {
  door: Extract<Door, { kind: "network" }>;
  people: People;
}

const plain = (response: Response, status: number, lines: readonly string[]): void =>
  void response
    .status(status)
    .type("text/plain")
    .send(`${lines.join("\n")}\n`);

/** The class list out and in, for whoever may let people in. A file's name is never looked at. */
export function classRoutes({ door, people }: ClassParts): Router {
  const router = Router();
  router.use("/class-list.csv", (request: Request, response: Response, next: NextFunction) => {
    const found = signedInAt(door, request.headers);
    // A browser always says where a file came from.
    const isFromPage = request.method === "GET" || request.headers.origin !== undefined;
    if (found && isFromPage && keepers.includes(found.staff.role)) return next();
    plain(response, 403, ["This is for a trainer or a technician."]);
  });

  router.get("/class-list.csv", (_request, response) => {
    response.set("Cache-Control", "no-store").attachment("class-list.csv").type("text/csv");
    response.send(people.classList());
  });

  // One byte more than is read, so that the list itself says that it is too large.
  const body = raw({ type: () => true, limit: largestListBytes + 1 });
  router.post("/class-list.csv", body, async (request: Request, response: Response) => {
    if (people.isDemonstration)
      return plain(response, 409, ["The people of this bench are invented. Set up its first person."]);
    const list = readClassList(request.body instanceof Buffer ? request.body : new Uint8Array());
    if (!list.ok) return plain(response, 422, list.faults.map(faultLine));
    const found = signedInAt(door, request.headers);
    const author = authorOf({
      kind: found?.staff.role ?? "nobody",
      learner: null,
      session: found?.session.logId ?? null,
    });
    const added = await people.addClass(list.learners, author).catch(refusalOfPin);
    if ("ok" in added)
      return plain(response, 503, ["Too many people are signing in just now. Nobody was added: try again."]);
    if ("faults" in added) return plain(response, 422, added.faults.map(faultLine));
    plain(response, 200, [`${added.addedCount} learners were added.`]);
  });
  return router;
}
