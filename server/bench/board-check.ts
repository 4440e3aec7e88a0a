import type { BenchCommand } from "../../shared/protocol/commands.schema.ts";
import type { ContactId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import { contactsOf } from "../board/contacts-of.ts";
import type { LeadResult } from "../board/scanner-port.ts";
import { placesOfEntry, stationsById } from "../../shared/wiring/conductors-of.ts";
import { done, refuse, type Refusal } from "../refusal.ts";
import type { BenchCore } from "./bench-core.ts";

type Answer = { ok: true } | Refusal;

/** What the tools for the health of the board have found. */
export interface BoardCheck {
  /** What the last self-check found. */
  found: BoardFault[];
  walk: { isOn: boolean; touched: ContactId[]; leftCount: number } | undefined;
  lead: (LeadResult & { sensed: string }) | undefined;
}

export const nothingChecked: BoardCheck = { found: [], walk: undefined, lead: undefined };

/** True while somebody's assessed work lies open on the bench, whoever stands at it. */
export const isAssessing = ({ run, toResume }: BenchCore): boolean => {
  const state = run?.state ?? toResume;
  return state?.mode === "assessed" && state.status !== "handed-in" && state.status !== "left";
};

/**
 * Checks an empty board line by line. Done once the first line is checked; it goes on by itself, says how far it
 * is, and other commands do not wait for it.
 */
export async function startSelfCheck(core: BenchCore): Promise<Answer> {
  if (core.board.state !== "ready") return refuse("no-board");
  // On a real board only the scanner can tell a lead from outputs that are tied together.
  if (core.parts.isSimulated && core.leads.size > 0) return refuse("board-not-empty");
  if (core.selfCheck && !core.selfCheck.isDone) return done;
  core.selfCheck = { doneCount: 0, totalCount: 0, isDone: false };
  core.check = { ...core.check, found: [] };
  const begun = new Promise<Answer>((resolve) => (core.selfCheckBegun = () => resolve(done)));
  const ended = core.parts.port.request({ type: "self-check" }).then((answer) => {
    if (!answer.ok) {
      core.selfCheck = undefined;
      core.publish();
    }
    return answer;
  });
  return Promise.race([begun, ended]);
}

/** Starts a walk along the board with a probe, from nothing touched, or ends it; what was touched stays shown. */
export async function walkTest(core: BenchCore, { isOn }: BenchCommand<"walk-test">): Promise<Answer> {
  if (isAssessing(core)) return refuse("not-in-assessed");
  if (core.board.state !== "ready") return refuse("no-board");
  if (!core.board.hasProbes) return refuse("no-probes");
  const answer = await core.parts.port.request({ type: "walk-test", on: isOn });
  if (!answer.ok) return answer;
  const { walk } = core.check;
  const fresh = { isOn, touched: [], leftCount: contactsOf(core.parts.board).length };
  core.check = { ...core.check, walk: isOn || !walk ? fresh : { ...walk, isOn } };
  return done;
}

/** A probe has come to a contact: it stands last in the list. */
export function noteTouch(core: BenchCore, contact: ContactId, leftCount: number): void {
  const { walk } = core.check;
  if (!walk?.isOn) return;
  const touched = [...walk.touched.filter((one) => one !== contact), contact];
  core.check = { ...core.check, walk: { ...walk, touched, leftCount } };
}

/** Asks what a lead between two entries shows; told once the board is at rest. */
export function testLead(core: BenchCore, { entryA, entryB }: BenchCommand<"test-lead">): Answer {
  if (isAssessing(core)) return refuse("not-in-assessed");
  if (core.board.state !== "ready") return refuse("no-board");
  const stations = stationsById(core.parts.board.stations);
  const isThere = [entryA, entryB].every((entry) => placesOfEntry(entry, stations).length > 0);
  if (!isThere || entryA === entryB) return refuse("no-such-place");
  core.check = { ...core.check, lead: undefined };
  // A lead that is loose may keep the board from coming to rest; other commands do not wait for it.
  void core.parts.port.request({ type: "test-lead", entryA, entryB });
  return done;
}

const leadsIn = (sensed: SensedState | undefined): string => JSON.stringify([sensed?.groups, sensed?.codes]);

/** The answer of the lead tester, with what was in the board then. */
export function noteLead(core: BenchCore, result: LeadResult): void {
  core.check = { ...core.check, lead: { ...result, sensed: leadsIn(core.sensed) } };
}

/** Another lead is in: the one between the two entries is tested again. */
export function testLeadAgain(core: BenchCore): void {
  const { lead } = core.check;
  if (!lead || !core.isSettled || lead.sensed === leadsIn(core.sensed)) return;
  core.check = { ...core.check, lead: { ...lead, sensed: leadsIn(core.sensed) } };
  if (isAssessing(core)) return;
  void core.parts.port.request({ type: "test-lead", entryA: lead.entryA, entryB: lead.entryB });
}

/** What was checked is over: somebody else begins to work, or the scanner starts anew. */
export function endChecks(core: BenchCore): void {
  if (core.selfCheck?.isDone) core.selfCheck = undefined;
  if (core.check.walk?.isOn) void core.parts.port.request({ type: "walk-test", on: false });
  core.check = nothingChecked;
}
