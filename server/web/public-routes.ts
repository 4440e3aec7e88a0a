import { type Request, type Response, Router } from "express";
import { publicSheetNames, publicText } from "../../shared/protocol/public-text.ts";
import type { Language } from "../../shared/text/languages.ts";
import { publicSheet } from "../public-text/public-sheet.ts";
import type { SheetFacts } from "../public-text/sheet-text.ts";
import { languageAsked } from "./language-asked.ts";
import { lettersFile, lettersPath, lettersRoot } from "./house-page.ts";
import { publicPage } from "./public-page.ts";

export interface PublicParts {
  facts: SheetFacts;
  /** The bench's own language, for who asks for none. */
  language: () => Language;
}

/** What anybody may read: cautions, what is kept of them, how far everybody can use the bench, who made its parts. */
export function publicRoutes({ facts, language }: PublicParts): Router {
  const router = Router();
  router.get(publicText, (request: Request, response: Response) =>
    response.redirect(
      303,
      `${publicText}/${publicSheetNames[0]}?language=${languageAsked(request, language())}`,
    ),
  );
  router.get(`${lettersPath}/:name`, (request: Request, response: Response, next) => {
    const file = lettersFile(String(request.params["name"]));
    if (file === undefined) return next();
    response.sendFile(file, { root: lettersRoot, maxAge: "30d", immutable: true });
  });
  router.get(`${publicText}/:name`, (request: Request, response: Response) => {
    const asked = String(request.params["name"]);
    const name = publicSheetNames.find((one) => one === asked || `${one}.json` === asked);
    if (!name) return void response.status(404).type("text/plain").send("There is no such sheet.\n");
    const spoken = languageAsked(request, language());
    const sheet = publicSheet(name, spoken, facts);
    response.set("Cache-Control", "no-cache");
    if (asked === name) response.type("html").send(publicPage(sheet, spoken));
    else response.json(sheet);
  });
  return router;
}
