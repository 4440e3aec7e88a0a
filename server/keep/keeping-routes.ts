import { statSync } from "node:fs";
import { isAbsolute, join } from "node:path";
import { json, type Request, type Response, Router } from "express";
import { z } from "zod";
import { keepData, type KeepingView, type TaskRefusal } from "../../shared/protocol/keep-view.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { authorOf } from "../acts/actor.ts";
import { backUpsIn } from "../keeping/back-up.ts";
import { isSealed } from "../keeping/sealed-file.ts";
import { answerWith, say } from "../web/answers.ts";
import type { KeepParts, OnlyFor } from "./keep-parts.ts";
import { backUpTime } from "./machine-view.ts";

/** As the settings of the program have it for the nightly ones. */
const leastLetters = 12;
const passphraseSchema = z.string().max(200).optional();
const folderSchema = z.string().max(500).optional();
const backUpSchema = z.strictObject({ folder: folderSchema, passphrase: passphraseSchema });
const restoreSchema = z.strictObject({
  folder: folderSchema,
  name: z.string().max(100),
  passphrase: passphraseSchema,
  isTried: z.boolean(),
});
const updateSchema = z.strictObject({ folder: z.string().max(500) });

/** A folder that is there, by its whole path; nothing is made where a stick is not in. */
const isFolder = (path: string): boolean =>
  isAbsolute(path) && (statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false);

function backUpsOf(folder: string): KeepingView["backUps"] {
  try {
    if (!isFolder(folder)) return null;
    return backUpsIn(folder).map((name) => {
      const path = join(folder, name);
      const { size } = statSync(path);
      return { name, sizeBytes: size, madeWallMs: backUpTime(name), isSealed: isSealed(path) };
    });
  } catch {
    return null;
  }
}

/** Back-ups made and brought back, and the program brought up to date, by the technician. */
export function keepingRoutes({ core, machine, keeping, actorOf }: KeepParts, only: OnlyFor): Router {
  const router = Router();
  const technician = only("technician");
  const { tasks, passphrase: usual } = keeping;
  const body = json({ limit: "16kb", type: () => true });
  const no = (response: Response, why: TaskRefusal): void => say(response, 409, why);
  /** What was asked for, in its form; undefined where it has none, which is then said. */
  const asked = <Of>(schema: z.ZodType<Of>, request: Request, response: Response): Of | undefined => {
    const parsed = parseSafely(schema, request.body);
    if (!parsed.success) say(response, 400, "This is not what this address takes.");
    return parsed.success ? parsed.data : undefined;
  };
  const folderOf = (named: string | undefined): string | undefined => {
    const folder = named === undefined || named === "" ? machine.backUpTo : named;
    return folder !== undefined && isFolder(folder) ? folder : undefined;
  };
  const begun = (response: Response, isBegun: boolean): void => {
    if (isBegun) answerWith(response, {}, 202);
    else no(response, "busy");
  };

  router.get(`${keepData}/keeping`, technician, (request, response) => {
    const named = typeof request.query["folder"] === "string" ? request.query["folder"] : "";
    const folder = named === "" ? machine.backUpTo : named;
    answerWith(response, {
      task: tasks.view,
      folder: machine.backUpTo ?? null,
      isSealedByDefault: usual !== undefined,
      backUps: folder === undefined ? null : backUpsOf(folder),
      version: core.parts.softwareVersion,
      canUpdate: keeping.canUpdate,
    } satisfies KeepingView);
  });

  router.post(`${keepData}/keeping/back-up`, technician, body, (request, response) => {
    const wanted = asked(backUpSchema, request, response);
    if (!wanted) return;
    const folder = folderOf(wanted.folder);
    const typed = wanted.passphrase ?? "";
    if (folder === undefined) return no(response, "no-folder");
    if (typed !== "" && typed.length < leastLetters) return no(response, "short-passphrase");
    begun(response, tasks.backUp(folder, typed === "" ? usual : typed));
  });

  router.post(`${keepData}/keeping/restore`, technician, body, (request, response) => {
    const wanted = asked(restoreSchema, request, response);
    if (!wanted) return;
    const folder = folderOf(wanted.folder);
    if (folder === undefined) return no(response, "no-folder");
    // A name is held against those that lie there; it is never taken for a path.
    if (!backUpsIn(folder).includes(wanted.name)) return no(response, "no-back-up");
    if (!wanted.isTried && !keeping.isFree()) return no(response, "in-use");
    const typed = wanted.passphrase ?? "";
    const author = authorOf(actorOf(request));
    const from = join(folder, wanted.name);
    begun(response, tasks.restore(from, typed === "" ? usual : typed, author, wanted.isTried));
  });

  router.post(`${keepData}/keeping/update`, technician, body, (request, response) => {
    const wanted = asked(updateSchema, request, response);
    if (!wanted) return;
    if (!keeping.canUpdate) return no(response, "no-key");
    if (!isFolder(wanted.folder)) return no(response, "no-folder");
    if (!keeping.isFree()) return no(response, "in-use");
    begun(response, tasks.update(wanted.folder));
  });

  router.post(`${keepData}/keeping/stop`, technician, (_request, response) => {
    tasks.stop();
    answerWith(response, {});
  });
  return router;
}
