import express, { type Express, type NextFunction, type Request, type Response } from "express";
import { rateLimit } from "express-rate-limit";
import helmet from "helmet";
import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { type DeskParts, deskRoutes } from "../desk/desk-routes.ts";
import { type EvidenceParts, evidenceRoutes } from "../evidence/evidence-routes.ts";
import type { KeepParts } from "../keep/keep-parts.ts";
import { type LeadRouteParts, leadRoutes } from "../lead/lead-routes.ts";
import { keepRoutes } from "../keep/keep-routes.ts";
import { type Door, staffAt } from "./door.ts";
import { isOwnOrigin } from "./origin.ts";
import { type PublicParts, publicRoutes } from "./public-routes.ts";
import { type ShowParts, showRoutes } from "./show-routes.ts";
import { type SignInParts, signInRoutes } from "./sign-in-routes.ts";

export interface AppParts {
  /** The folder of the built bench screen. */
  kioskFolder: string;
  door: Door;
  signIn: Omit<SignInParts, "door">;
  health: () => Health;
  publicText: PublicParts;
  /** The story of the show in a language. */
  story: ShowParts["story"];
  /** How far the log has come, to be kept on another machine; undefined where there is no log. */
  anchor: () => object | undefined;
  /** The wiring on the board, or undefined where it may not be had now. */
  wiring: () => Wiring | undefined;
  evidence: Omit<EvidenceParts, "note">;
  desk: DeskParts;
  lead: LeadRouteParts;
  keep: KeepParts;
  note: (sentence: string) => void;
}

const requestsAMinute = 1200;

/**
 * The pages and files of the bench over HTTP, through one of its doors. Nothing here changes anything but who is signed
 * in; acts come over the socket. Through the door on the network everything that stands after the gate is for who has
 * signed in: a page that is added there is shut until somebody has.
 */
export function createApp({
  kioskFolder,
  door,
  signIn,
  health,
  publicText,
  story,
  anchor,
  wiring,
  evidence,
  desk,
  lead,
  keep,
  note,
}: AppParts): Express {
  const app = express();
  app.disable("x-powered-by");
  app.use(
    helmet({
      // The bench is served over plain HTTP on its own panel or a workshop network.
      strictTransportSecurity: false,
      // With none at all a browser sends a form of the bench's own pages from the origin "null", which is refused.
      referrerPolicy: { policy: "same-origin" },
      contentSecurityPolicy: {
        directives: {
          "default-src": ["'self'"],
          "connect-src": ["'self'"],
          // The bench has its own letters; helmet would let them come from any site.
          "font-src": ["'self'"],
          "img-src": ["'self'", "data:"],
          // Positions on the plan are set as style properties; no style comes from outside.
          "style-src": ["'self'", "'unsafe-inline'"],
          "script-src": ["'self'"],
          "object-src": ["'none'"],
          "frame-ancestors": ["'none'"],
          "upgrade-insecure-requests": null,
        },
      },
    }),
  );
  app.use((request: Request, response: Response, next: NextFunction) => {
    if (isOwnOrigin(request.headers, door.names)) return next();
    response.status(403).type("text/plain").send("This bench is not open to other sites.\n");
  });
  app.use(
    rateLimit({ windowMs: 60_000, limit: requestsAMinute, standardHeaders: "draft-8", legacyHeaders: false }),
  );

  app.get("/health", (_request, response) => {
    response.set("Cache-Control", "no-store").json(health());
  });
  app.use(publicRoutes(publicText));
  app.use(showRoutes({ kioskFolder, story }));

  if (door.kind === "network") {
    app.use(signInRoutes({ door, ...signIn }));
    app.use((request: Request, response: Response, next: NextFunction) => {
      if (staffAt(door, request.headers)) return next();
      if (request.method === "GET" && request.path === "/") return response.redirect(303, "/sign-in");
      if (request.method === "GET" && isDeskPage(request.path))
        return response.redirect(303, "/sign-in?to=desk");
      response.status(401).type("text/plain").send("Sign in first.\n");
    });
  }

  app.get("/anchor.json", (_request, response) => {
    const found = anchor();
    if (!found) return void response.status(404).type("text/plain").send("There is no log now.\n");
    response.set("Cache-Control", "no-store").attachment("anchor.json").json(found);
  });

  app.get("/wiring.json", (_request, response) => {
    const found = wiring();
    if (!found) return void response.status(404).type("text/plain").send("There is no wiring to save now.\n");
    response.set("Cache-Control", "no-store").attachment("wiring.json").json(found);
  });

  app.use(evidenceRoutes({ ...evidence, note }));
  app.use(deskRoutes(desk));
  app.use(leadRoutes(lead));
  app.use(keepRoutes(keep));

  app.use(express.static(kioskFolder, { cacheControl: false, setHeaders: noCache }));

  app.use((request: Request, response: Response) => {
    const isBuilt = existsSync(join(kioskFolder, "index.html"));
    const sentence = isBuilt ? `There is no page ${request.path}.` : "The bench screen is not built yet.";
    response.status(404).type("text/plain").send(`${sentence}\n`);
  });
  app.use((error: unknown, _request: Request, response: Response, next: NextFunction) => {
    if (response.headersSent) return next(error);
    const status = statusOf(error);
    if (status !== undefined)
      return void response.status(status).type("text/plain").send("The bench cannot take this.\n");
    note(`http: ${error instanceof Error ? error.message : String(error)}`);
    response.status(500).type("text/plain").send("The bench could not answer this.\n");
  });
  return app;
}

/** What a reader of a request's body says of one that is too large or none; undefined for any other error. */
function statusOf(error: unknown): number | undefined {
  const status = error instanceof Error && "status" in error ? error.status : undefined;
  return typeof status === "number" && status >= 400 && status < 500 ? status : undefined;
}

const isDeskPage = (path: string): boolean => path === "/desk" || path === "/desk/";

const noCache = (response: Response): void => {
  response.set("Cache-Control", "no-cache");
};
