import { type Request, type Response, Router, urlencoded } from "express";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { Language } from "../../shared/text/languages.ts";
import { type People, refusalOfPin } from "../people/people.ts";
import { isStaff, type Staff } from "../people/person.ts";
import { refuse } from "../refusal.ts";
import type { Door } from "./door.ts";
import { languageAsked } from "./language-asked.ts";
import { cookieGone, cookieWith, idOfCookie } from "./session-cookie.ts";
import { signInPage } from "./sign-in-page.ts";
import type { WebSession } from "./web-sessions.ts";

const text = z.string().trim().max(64).default("");
const formSchema = z.object({ name: text, pin: text, badge: text, to: text, language: text });
const signOutSchema = z.object({ everywhere: z.string().optional() });

export interface SignInParts {
  door: Extract<Door, { kind: "network" }>;
  people: People;
  language: () => Language;
  /** Puts into the log who signed in, by what. @throws StoreError */
  signedIn: (staff: Staff, session: WebSession, by: "pin" | "badge") => void;
}

const largestForm = "4kb";

async function staffOf(people: People, form: unknown, address: string): Promise<Staff | Refusal> {
  const parsed = parseSafely(formSchema, form);
  if (!parsed.success) return refuse("wrong-pin");
  const { name, pin, badge } = parsed.data;
  if (badge !== "") {
    const person = await people.byBadge(badge, address).catch(refusalOfPin);
    return "ok" in person ? person : isStaff(person) ? person : refuse("unknown-badge");
  }
  const same = people.unlockers().filter((one) => one.name.toLowerCase() === name.toLowerCase());
  // A name that nobody has takes as long, and is waited for as long; of two with one name neither is meant.
  const id = same.length === 1 ? (same[0]?.id ?? "") : `nobody ${name.toLowerCase()}`;
  return people.byPin(id, pin, address).catch(refusalOfPin);
}

/** How the staff sign in from the network, and out again. */
export function signInRoutes({ door, people, language, signedIn }: SignInParts): Router {
  const { sessions, names } = door;
  const router = Router();
  const page = (response: Response, status: number, wanted: Wanted, refusal?: Refusal): void => {
    const spoken = languageAsked({ query: wanted }, language());
    const told = { isEncrypted: names.scheme === "https", isToDesk: wanted.to === "desk" };
    response
      .status(status)
      .set("Cache-Control", "no-store")
      .type("html")
      .send(signInPage(spoken, told, refusal));
  };

  router.get("/sign-in", (request, response) => page(response, 200, wantedBy(request.query)));

  router.post(
    "/sign-in",
    urlencoded({ extended: false, limit: largestForm }),
    async (request: Request, response: Response) => {
      // A browser always says where a form came from.
      if (request.headers.origin === undefined)
        return page(response, 403, wantedBy(request.body), refuse("wrong-pin"));
      const staff = await staffOf(people, request.body, request.socket.remoteAddress ?? "");
      if ("ok" in staff) return page(response, 403, wantedBy(request.body), staff);
      const { id, session } = sessions.begin(staff);
      try {
        signedIn(staff, session, formBadge(request.body) ? "badge" : "pin");
      } catch (error) {
        sessions.end(id);
        throw error;
      }
      const before = idOfCookie(request.headers.cookie, names.scheme);
      if (before !== undefined) sessions.end(before);
      response
        .set("Set-Cookie", cookieWith(id, names.scheme))
        .redirect(303, wantedBy(request.body).to === "desk" ? "/desk/" : "/");
    },
  );

  router.post("/sign-out", urlencoded({ extended: false, limit: largestForm }), (request, response) => {
    const id = idOfCookie(request.headers.cookie, names.scheme);
    const found = sessions.staffOf(id);
    const parsed = parseSafely(signOutSchema, request.body);
    if (found && parsed.success && parsed.data.everywhere !== undefined) sessions.endAllOf(found.staff.id);
    if (id !== undefined) sessions.end(id);
    response.set("Set-Cookie", cookieGone(names.scheme)).redirect(303, "/sign-in");
  });
  return router;
}

/** What an address or a form says of the page: where it leads, and its language. */
type Wanted = Partial<Pick<z.infer<typeof formSchema>, "to" | "language">>;

const wantedBy = (form: unknown): Wanted => {
  const parsed = parseSafely(formSchema, form);
  return parsed.success ? { to: parsed.data.to, language: parsed.data.language } : {};
};

const formBadge = (form: unknown): boolean => {
  const parsed = parseSafely(formSchema, form);
  return parsed.success && parsed.data.badge !== "";
};
