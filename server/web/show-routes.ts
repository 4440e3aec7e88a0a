import express, { Router } from "express";
import { join } from "node:path";
import { storyData, type StoryView } from "../../shared/protocol/show-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import { languageAsked } from "./language-asked.ts";

export interface ShowParts {
  /** The folder of the built screens. */
  kioskFolder: string;
  story: (language: Language) => Promise<StoryView>;
}

const yearMs = 365 * 24 * 3600 * 1000;

/**
 * The show, for anybody: its page, its story, and the built files of all screens, which are the program's own text and
 * hold nothing of this bench.
 */
export function showRoutes({ kioskFolder, story }: ShowParts): Router {
  const router = Router();
  router.get(storyData, async (request, response) => {
    const told = await story(languageAsked(request));
    response.set("Cache-Control", "no-cache").json(told);
  });
  router.use(
    "/assets",
    express.static(join(kioskFolder, "assets"), { immutable: true, maxAge: yearMs, index: false }),
  );
  router.use(
    "/show",
    express.static(join(kioskFolder, "show"), {
      cacheControl: false,
      setHeaders: (response) => void response.set("Cache-Control", "no-cache"),
    }),
  );
  return router;
}
