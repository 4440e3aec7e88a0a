import { isDeepStrictEqual } from "node:util";
import type { BoardLeads } from "../../shared/board/board-leads.ts";
import {
  type CableId,
  cableOfConductor,
  conductorId,
  type ContactId,
  entryOf,
} from "../../shared/board/ids.ts";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { Fact } from "../../shared/protocol/bench-view.ts";
import { mayTouch, mayWire } from "../attempt/may-wire.ts";
import { asFoundCables } from "../attempt/settings.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { BoardRequest } from "../board/scanner-port.ts";
import {
  codeForCable,
  isLeadIn,
  leadsOfCable,
  leadsOfDrawnCable,
  leadsOfSpecs,
} from "../board/leads-of-cables.ts";
import { done, refuse } from "../refusal.ts";
import type { BenchCore } from "./bench-core.ts";
import type { Refusal, Reply } from "../../shared/protocol/reply.ts";

/** Asks something of the board. What is plugged is shown once its `pins` are in, all else as soon as it is sensed. */
async function askBoard(core: BenchCore, request: BoardRequest, pins?: BoardLeads): Promise<Reply> {
  if (pins) core.landing.begin(pins);
  else core.landing.end();
  const answer = await core.parts.port.request(request);
  if (pins && !answer.ok) core.landing.end();
  return answer;
}

/** Asks something of the board. What was in before can be had again by undo. */
async function bringAbout(
  core: BenchCore,
  run: AttemptRun,
  request: BoardRequest,
  pins?: BoardLeads,
): Promise<Reply> {
  const before = core.board.leads;
  const sizes = sizesDeclared(run);
  const answer = await askBoard(core, request, pins);
  // Whoever asked may have left meanwhile.
  if (core.work.run === run && !isDeepStrictEqual(core.board.leads, before))
    core.work.addUndo({ kind: "leads", before, sizes });
  return answer;
}

/** The sizes that were declared for the cables that are in: a cable that stays out loses its own. */
function sizesDeclared({ cables, state }: AttemptRun): Map<CableId, Fact> {
  const isIn = new Set<string>(cables.map(({ id }) => id));
  const declared = [...state.declared.values()].filter(
    ({ subject, key }) => key === "csaMm2" && isIn.has(subject),
  );
  return new Map(declared.map(({ subject, value }) => [subject as CableId, value]));
}

/** Declares anew what was declared for cables that undo brought back and is not any more. */
function declareAgain(core: BenchCore, run: AttemptRun, sizes: ReadonlyMap<CableId, Fact>): void {
  const now = new Set(
    [...run.state.declared.values()].filter(({ key }) => key === "csaMm2").map(({ subject }) => subject),
  );
  const lost = [...sizes].filter(([cable]) => !now.has(cable));
  if (lost.length === 0) return;
  run.record(
    lost.map(([subject, value]) => ({
      type: "setting",
      content: { subject, key: "csaMm2", value, by: "learner" },
    })),
    core.session.author,
  );
}

/** Why no lead can be moved on the screen: hands do it, there is no board, or the circuit is not dead. */
const onlySimulated = (core: BenchCore, run: AttemptRun): Refusal | undefined => {
  if (!core.parts.isSimulated) return refuse("real-board");
  return core.board.isReady ? mayTouch(run.state) : refuse("no-board");
};

/** One lead between two contacts. */
export async function plug(
  core: BenchCore,
  run: AttemptRun,
  { contactA, contactB }: ActMessage<"plug">,
): Promise<Reply> {
  const refused = onlySimulated(core, run);
  if (refused) return refused;
  if (contactA === contactB) return refuse("no-such-place");
  if (isLeadIn(core.board.leads, contactA, contactB)) return refuse("in-use");
  const request = { type: "plug", contactA, contactB } as const;
  return bringAbout(core, run, request, { leads: [[contactA, contactB]], codes: [] });
}

type CableRequest = Extract<BoardRequest, { type: "plug-cable" }>;

/** How a whole cable of a size comes between two entries, with the leads of it; or why it cannot. */
export function cableToPlug(
  core: Pick<BenchCore, "board" | "parts">,
  { entryA, entryB, csaMm2 }: ActMessage<"plug-cable">,
): { request: CableRequest; cores: BoardLeads["leads"] } | Refusal {
  const { board } = core.parts;
  const { hasCodes } = core.board;
  const code = hasCodes ? codeForCable(board, entryA, entryB, csaMm2) : undefined;
  const cores = leadsOfCable(board, entryA, entryB, code);
  if (entryA === entryB || cores.length === 0) return refuse("no-such-place");
  if (cores.some((lead) => isLeadIn(core.board.leads, ...lead))) return refuse("in-use");
  if (hasCodes && csaMm2 !== undefined && code === undefined) return refuse("unknown-code");
  return {
    request: { type: "plug-cable", entryA, entryB, ...(code === undefined ? {} : { code }) },
    cores,
  };
}

/**
 * A whole cable between two entries, of the size the learner took from the tray. On a board with codes its plug
 * says the size; on others the learner has declared it by taking it.
 */
export async function plugCable(
  core: BenchCore,
  run: AttemptRun,
  message: ActMessage<"plug-cable">,
): Promise<Reply> {
  const { csaMm2 } = message;
  const refused = onlySimulated(core, run);
  if (refused) return refused;
  const found = cableToPlug(core, message);
  if ("ok" in found && found.code !== "unknown-code") return found;
  if (csaMm2 !== undefined && !run.kit.scenario.parts.cableCsaMm2.includes(csaMm2))
    return refuse("not-a-choice");
  if ("ok" in found) return found;
  const { request, cores } = found;
  const { code, entryA, entryB } = request;
  const codes = code === undefined ? [] : [entryA, entryB].map((entry) => ({ entry, code }));
  const answer = await bringAbout(core, run, request, { leads: cores, codes });
  if (answer.ok && core.work.run === run && csaMm2 !== undefined && code === undefined && cores[0])
    run.record(
      [
        {
          type: "setting",
          content: {
            subject: cableOfConductor(conductorId(...cores[0])),
            key: "csaMm2",
            value: csaMm2,
            by: "learner",
          },
        },
      ],
      core.session.author,
    );
  return answer;
}

/**
 * Making the board what was found there is getting ready, not work on the circuit: it may be done before the circuit
 * is made dead, until the work has begun.
 */
const maySetUp = ({ state }: AttemptRun): Refusal | undefined =>
  state.entered.includes("wire") ? mayWire(state) : undefined;

/** Pulls one lead, every lead of a cable, or all. */
export async function pull(core: BenchCore, run: AttemptRun, command: ActMessage<"pull">): Promise<Reply> {
  const refused = (command.what === "all" ? maySetUp(run) : undefined) ?? onlySimulated(core, run);
  if (refused) return refused;
  if (command.what === "all") return bringAbout(core, run, { type: "pull", what: "all" });
  const goes = command.what === "lead" ? leadsBetween(core, command) : leadsOfDrawn(core, run, command.cable);
  if (goes.length === 0) return refuse("no-such-cable");
  return bringAbout(core, run, { type: "pull", what: { leads: goes } });
}

function leadsBetween(
  core: BenchCore,
  { contactA, contactB }: { contactA: ContactId; contactB: ContactId },
): BoardLeads["leads"] {
  return isLeadIn(core.board.leads, contactA, contactB) ? [[contactA, contactB]] : [];
}

function leadsOfDrawn(core: BenchCore, run: AttemptRun, cable: string) {
  const drawn = run.cables.find(({ id }) => id === cable);
  if (!drawn) return [];
  const ends = drawn.conductors.flat().filter((contact) => cable.startsWith(`${entryOf(contact)}~`));
  return leadsOfDrawnCable(core.board.leads, drawn.id, ends);
}

/** Plugs what was found there, and pulls what does not belong to it. */
export async function matchAsFound(core: BenchCore, run: AttemptRun): Promise<Reply> {
  const refused = maySetUp(run) ?? onlySimulated(core, run);
  if (refused) return refused;
  const { board } = core.parts;
  const found = leadsOfSpecs(board, [...asFoundCables(run.kit.stripped).values()]);
  return bringAbout(core, run, { type: "set-leads", to: { leads: found, codes: [] } });
}

/** Takes the last plug, pull or setting back. */
export async function undo(core: BenchCore, run: AttemptRun): Promise<Reply> {
  const last = core.work.undos.at(-1);
  if (!last) return refuse("nothing-to-undo");
  if (last.kind === "setting") {
    const { setting, before } = last;
    run.record(
      [{ type: "setting", content: { ...setting, value: before, by: "learner" } }],
      core.session.author,
    );
    core.work.dropLastUndo();
    return done;
  }
  const refusedBoard = onlySimulated(core, run);
  if (refusedBoard) return refusedBoard;
  const answer = await askBoard(core, { type: "set-leads", to: last.before });
  if (answer.ok && core.work.run === run) declareAgain(core, run, last.sizes);
  if (answer.ok && core.work.undos.at(-1) === last) core.work.dropLastUndo();
  return answer;
}
