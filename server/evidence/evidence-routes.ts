import { type Request, type Response, Router } from "express";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { type DeskQuery, readDeskQuery } from "../desk/attempt-query.ts";
import type { Author } from "../../shared/protocol/author.ts";
import { lineCountHeader } from "../../shared/protocol/desk-view.ts";
import { say } from "../web/answers.ts";
import { languageAsked } from "../web/language-asked.ts";
import type { AttemptFilter } from "../store/attempt-reader.ts";
import type { ShownDecisions, Viewer } from "../desk/shown-decisions.ts";
import type { Staff } from "../people/person.ts";
import type { Asked } from "./attempt-evidence.ts";
import type { EvidenceSource, Export, Pieces } from "./export.ts";
import { allExports } from "./exports.ts";

export interface EvidenceParts {
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
  /** Undefined where there are no records. */
  source: () => EvidenceSource | undefined;
  /** The list that an address asks for. */
  filterOf: (query: DeskQuery) => AttemptFilter;
  /** Whom decisions are shown, with the time by the bench's clock: each file tells them. */
  shown: Pick<ShownDecisions, "add" | "addAll">;
  authorOf: (request: Request) => Author;
  wallMs: () => number;
  note: (sentence: string) => void;
}

/** Where an export is asked for: `/evidence/<name>`, or `/evidence/<attempt>/<name>` for one attempt. */
export const exportPath = ({ of, name }: Pick<Export, "of" | "name">): string =>
  of === "attempts" ? `/evidence/${name}` : `/evidence/:attempt/${name}`;

/** The pieces of an export as they are asked for, or what stands against it. */
function piecesOf(
  made: Export,
  source: EvidenceSource,
  request: Request,
  filterOf: EvidenceParts["filterOf"],
  asked: Asked,
): { pieces: Pieces; lineCount?: number | undefined } | { status: number; sentence: string } {
  if (made.of === "attempts") {
    const query = readDeskQuery(request.query);
    if (!query) return { status: 400, sentence: "This is no list of attempts." };
    const filter = filterOf(query);
    return { pieces: made.pieces(source, filter, asked), lineCount: made.lineCount?.(source, filter) };
  }
  const record = source.attempts.byId(String(request.params["attempt"]));
  return record
    ? { pieces: made.pieces(source, record, asked) }
    : { status: 404, sentence: "There is no such attempt." };
}

/** So many decisions of a file are told one by one. */
const mostCounted = 200;

/** Whoever takes a file has been shown the decisions that it tells, and can give no blind view of them any more. */
function noteShown(
  made: Export,
  { attempts }: EvidenceSource,
  request: Request,
  { filterOf, shown, wallMs }: Pick<EvidenceParts, "filterOf" | "shown" | "wallMs">,
  viewer: Viewer,
): void {
  if (made.of === "attempt") {
    const record = attempts.byId(String(request.params["attempt"]));
    return shown.add(viewer, record ? [record] : []);
  }
  const filter = filterOf(readDeskQuery(request.query) ?? {});
  if (made.isNarrowed && filter.isDecided === false) return;
  const { attempts: told, next } = attempts.page({ ...filter, isDecided: true }, mostCounted);
  if (next || !made.isNarrowed) return shown.addAll(viewer, wallMs());
  shown.add(viewer, told);
}

/** The files of evidence, each for those its row in the table names; they are sent as fast as they are taken. */
export function evidenceRoutes(parts: EvidenceParts): Router {
  const { staffOf, source, filterOf, note } = parts;
  const router = Router();
  for (const made of allExports)
    router.get(exportPath(made), async (request: Request, response: Response) => {
      const staff = staffOf(request);
      if (!staff) return say(response, 401, "Sign in first.");
      if (!made.who.includes(staff.role)) return say(response, 403, "This is not for you.");
      const from = source();
      if (!from) return say(response, 503, "The records of this bench are damaged.");
      const asked = { language: languageAsked(request) };
      const found = piecesOf(made, from, request, filterOf, asked);
      if ("status" in found) return say(response, found.status, found.sentence);
      noteShown(made, from, request, parts, { staff, author: parts.authorOf(request) });
      response.set("Cache-Control", "no-store").attachment(made.name).type(made.mediaType);
      if (found.lineCount !== undefined) response.set(lineCountHeader, String(found.lineCount));
      try {
        await pipeline(Readable.from(found.pieces), response);
      } catch (error) {
        // Whoever asked may stop it; the file then ends where it was.
        if (!response.destroyed) response.destroy();
        const code = error instanceof Error && "code" in error ? error.code : undefined;
        if (code !== "ERR_STREAM_PREMATURE_CLOSE")
          note(`${made.name}: ${error instanceof Error ? error.message : String(error)}`);
      }
    });
  return router;
}
