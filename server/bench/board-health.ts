import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import { contactsOf } from "../board/contacts-of.ts";
import type { LeadResult } from "../board/scanner-port.ts";
import { coreRolesOf, stationsById } from "../../shared/wiring/conductors-of.ts";
import { done, refuse } from "../refusal.ts";
import type { BenchCore } from "./bench-core.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

/**
 * Checks an empty board line by line; one that does not look empty only where somebody says that it is. Done once the first line is checked; it goes on by itself, says how far it
 * is, and other commands do not wait for it.
 */
export async function startSelfCheck(
  core: BenchCore,
  { areLeadsOut }: { areLeadsOut: boolean },
): Promise<Reply> {
  if (!core.board.isReady) return refuse("no-board");
  const { selfCheck } = core.board;
  if (selfCheck && !selfCheck.isDone) return done;
  const begun = new Promise<Reply>((resolve) => core.board.startSelfCheck(() => resolve(done)));
  const ended = core.parts.port.request({ type: "self-check", areLeadsOut }).then((answer) => {
    if (!answer.ok) {
      core.board.dropSelfCheck();
      core.publish();
    }
    return answer;
  });
  return Promise.race([begun, ended]);
}

/** Starts a walk along the board with a probe, from nothing touched, or ends it; what was touched stays shown. */
export async function walkTest(core: BenchCore, { isOn }: ActMessage<"walk-test">): Promise<Reply> {
  if (!core.board.isReady) return refuse("no-board");
  if (!core.board.hasProbes) return refuse("no-probes");
  const answer = await core.parts.port.request({ type: "walk-test", on: isOn });
  if (!answer.ok) return answer;
  const { walk } = core.board;
  const fresh = { isOn, touched: [], leftCount: contactsOf(core.parts.board).length };
  core.board.walkOn(isOn || !walk ? fresh : { ...walk, isOn });
  return done;
}

/** Asks what a lead between two entries shows; told once the board is at rest. */
export function testLead(core: BenchCore, { entryA, entryB }: ActMessage<"test-lead">): Reply {
  if (!core.board.isReady) return refuse("no-board");
  const stations = stationsById(core.parts.board.stations);
  const isThere = [entryA, entryB].every((entry) => coreRolesOf(entry, stations).length > 0);
  if (!isThere || entryA === entryB) return refuse("no-such-place");
  core.board.showLead(undefined);
  // A lead that is loose may keep the board from coming to rest; other commands do not wait for it.
  void core.parts.port.request({ type: "test-lead", entryA, entryB });
  return done;
}

const leadsIn = (sensed: SensedState | undefined): string => JSON.stringify([sensed?.groups, sensed?.codes]);

/** The answer of the lead tester, with what was in the board then. */
export function noteLead(core: BenchCore, result: LeadResult): void {
  core.board.showLead({ ...result, sensed: leadsIn(core.board.sensed) });
}

/** Another lead is in: the one between the two entries is tested again. */
export function testLeadAgain(core: BenchCore): void {
  const { lead, isSettled, sensed } = core.board;
  if (!lead || !isSettled || lead.sensed === leadsIn(sensed)) return;
  core.board.showLead({ ...lead, sensed: leadsIn(sensed) });
  if (core.work.isAssessed) return;
  void core.parts.port.request({ type: "test-lead", entryA: lead.entryA, entryB: lead.entryB });
}

/** What was checked is over: somebody else begins to work, or the scanner starts anew. */
export function endHealthTools(core: BenchCore): void {
  if (core.board.walk?.isOn) void core.parts.port.request({ type: "walk-test", on: false });
  core.board.endHealthTools();
}
