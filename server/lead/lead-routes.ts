import { type Request, type Response, Router } from "express";
import { leadData, type LeadView } from "../../shared/protocol/lead-view.ts";
import { changeOf } from "../../shared/protocol/view-change.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Staff } from "../people/person.ts";
import { answerWith, say } from "../web/answers.ts";
import { leadView } from "./lead-view.ts";

export interface LeadRouteParts {
  core: BenchCore;
  /** Who of the staff asks; undefined where nobody of them does. */
  staffOf: (request: Request) => Staff | undefined;
}

/** Twice a second at most: what changes in between is told at once, worked out and written down once for everybody. */
const tellEveryMs = 500;
/** A stream on which nothing is told is not taken for a dead one. */
const hereEveryMs = 15_000;

const mayLead = (staff: Staff | undefined): boolean =>
  staff?.role === "trainer" || staff?.role === "technician";

/** All that watch the page of a lead. */
class Watchers {
  readonly #core: BenchCore;
  readonly #streams = new Map<Response, () => boolean>();
  #sent: LeadView | undefined;
  #cancel: (() => void) | undefined;
  #cancelHere: (() => void) | undefined;
  #endListening: (() => void) | undefined;

  constructor(core: BenchCore) {
    this.#core = core;
  }

  /** Begins a stream with the whole view. `isLive` says whether whoever watches still may. */
  add(response: Response, isLive: () => boolean): void {
    const { lead, clock, people } = this.#core.parts;
    if (!lead) return;
    if (this.#streams.size === 0) {
      const ends = [lead.workshop, lead.link].map((one) => one.onChange(() => this.#later()));
      this.#endListening = () => ends.forEach((end) => end());
      this.#here();
    }
    // Who is there already gets what changed until now, and whoever comes begins with the same.
    this.#tell();
    this.#sent ??= leadView(lead, clock, people);
    this.#streams.set(response, isLive);
    response.write(`event: view\ndata: ${JSON.stringify(this.#sent)}\n\n`);
    response.on("close", () => {
      this.#streams.delete(response);
      if (this.#streams.size > 0) return;
      this.#endListening?.();
      this.#cancel?.();
      this.#cancelHere?.();
      this.#cancel = undefined;
      this.#sent = undefined;
    });
  }

  #later(): void {
    this.#cancel ??= this.#core.parts.timers.after(tellEveryMs, () => {
      this.#cancel = undefined;
      this.#tell();
    });
  }

  #here(): void {
    this.#cancelHere = this.#core.parts.timers.after(hereEveryMs, () => {
      this.#write(": here\n\n");
      this.#here();
    });
  }

  #tell(): void {
    const { lead, clock, people } = this.#core.parts;
    const before = this.#sent;
    if (!lead || !before) return;
    const now = leadView(lead, clock, people);
    const change = changeOf({ ...before, nowWallMs: 0 }, { ...now, nowWallMs: 0 });
    if (!change) return;
    this.#sent = now;
    this.#write(`event: change\ndata: ${JSON.stringify(changeOf(before, now))}\n\n`);
  }

  #write(text: string): void {
    for (const [response, isLive] of this.#streams) {
      // Whoever does not read is let go; their page asks anew.
      if (!isLive() || response.writableLength > 4_000_000) response.end();
      else response.write(text);
    }
  }
}

/** What a trainer at the lead sees of all benches, and which leads a technician finds by name. */
export function leadRoutes({ core, staffOf }: LeadRouteParts): Router {
  const router = Router();
  const watchers = new Watchers(core);
  router.use(leadData, (request, response, next) => {
    const staff = staffOf(request);
    if (mayLead(staff)) return next();
    if (staff) say(response, 403, "This is not for you.");
    else say(response, 401, "Sign in first.");
  });
  router.get(`${leadData}/stream`, (request, response) => {
    if (!core.parts.lead) return say(response, 404, "This bench can neither lead nor be led.");
    response.set({ "Cache-Control": "no-store", "Content-Type": "text/event-stream" });
    response.flushHeaders();
    watchers.add(response, () => mayLead(staffOf(request)));
  });
  router.get(`${leadData}/found`, async (_request, response) => {
    answerWith(response, { leads: (await core.parts.lead?.names?.find()) ?? [] });
  });
  return router;
}
