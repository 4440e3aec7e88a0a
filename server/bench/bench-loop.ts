import type { ContactId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { BoardListener, LeadResult } from "../board/scanner-port.ts";
import { leadsOfPlugged } from "../board/leads-of-cables.ts";
import type { BenchCore } from "./bench-core.ts";
import type { NoBoard } from "./board-now.ts";
import { endHealthTools, noteLead, testLeadAgain } from "./board-health.ts";
import { pluggedBefore, resumeAttempt } from "./resume-attempt.ts";
import { pluggedOf } from "../../shared/wiring/plugged.ts";
import { isTellable, pluggedNow } from "./plugged-now.ts";
import { ProbeFollower } from "./probe-follower.ts";

const faultMergeMs = 1000;
const retryMs = 5000;

/**
 * From what the board says to what is shown and logged: a sensed state goes into the attempt, which draws and
 * judges from it; the screens are told at once, the log when the changes that come together have been merged.
 */
export class BenchLoop implements BoardListener {
  readonly #core: BenchCore;
  #faultText = "[]";
  #isFaultLogDue = false;
  #isResumeDue = false;
  /** Why the board is not there, as it was last said; undefined while it is. */
  #saidWhy: string | undefined;
  readonly #probes = new ProbeFollower();

  constructor(core: BenchCore) {
    this.#core = core;
  }

  /** Opens the board; the simulated one with the leads that were in when the bench stopped. */
  start(): void {
    const core = this.#core;
    const { isSimulated, board, records } = core.parts;
    const before = leadsOfPlugged(pluggedBefore(records));
    core.parts.port.open(
      () => ({ board, ...(isSimulated ? { leads: core.board.wasOpen ? core.board.leads : before } : {}) }),
      this,
    );
  }

  opened(info: Parameters<BoardListener["opened"]>[0]): void {
    this.#core.board.open(info);
    if (this.#saidWhy !== undefined) this.#core.parts.note("board: it is there again");
    this.#saidWhy = undefined;
    this.#core.publish();
  }

  moved(moved: Parameters<BoardListener["moved"]>[0]): void {
    this.#core.board.move(moved);
  }

  lost(why: NoBoard): void {
    this.#core.board.lose(why);
    this.#sayWhy(why);
    endHealthTools(this.#core);
    this.#core.publish();
  }

  /** For the terminal and the journal: once for each reason, however often the board is tried again. */
  #sayWhy(why: NoBoard): void {
    const { noBoardSentence, note } = this.#core.parts;
    const sentence = noBoardSentence(why);
    if (sentence !== this.#saidWhy) note(`board: ${sentence}`);
    this.#saidWhy = sentence;
  }

  sensed(state: SensedState): void {
    const core = this.#core;
    const { work } = core;
    core.board.sense(state);
    const canBeTold = isTellable(state);
    core.health.guard(() => {
      if (!work.toResume) work.run?.sense(pluggedNow(work.run.plugged, state));
      // What changed while the bench was off can be said once the board can be read and is at rest.
      else if (canBeTold && core.board.isSettled) resumeAttempt(core, pluggedOf(state));
    });
    if (work.toResume && canBeTold && core.board.isSettled) this.#resumeLater();
    this.followProbes();
    this.#logFaultsSoon();
    testLeadAgain(core);
    core.show.sense(pluggedNow(core.show.plugged, state), core.board.isSettled);
    if (core.board.isSettled) core.cameToRest();
    core.landing.sense(state);
    core.publish();
  }

  /** The probe leads of the board move the meter's; after an act too, for who comes to the step with a probe down. */
  followProbes(): void {
    this.#core.health.guard(() => this.#probes.follow(this.#core));
  }

  /** The log could not be written: the work of before is taken up when it can, also where nothing moves. */
  #resumeLater(): void {
    if (this.#isResumeDue) return;
    this.#isResumeDue = true;
    this.#core.parts.timers.after(retryMs, () => {
      this.#isResumeDue = false;
      const { board, work } = this.#core;
      if (work.toResume && board.sensed) this.sensed(board.sensed);
    });
  }

  selfCheckProgress(doneCount: number, totalCount: number): void {
    this.#core.board.selfCheckAt(doneCount, totalCount);
    this.#core.publish();
  }

  selfCheckResult(faults: BoardFault[]): void {
    const { board, session, parts } = this.#core;
    const wallMs = parts.clock.wallMs();
    board.endSelfCheck(faults, wallMs);
    const lastSelfCheck = { board: parts.board.id, faultCount: faults.length, wallMs };
    session.remember({ lastSelfCheck });
    this.#core.publish();
  }

  walkTestTouch(contact: ContactId, leftCount: number): void {
    this.#core.board.touch(contact, leftCount);
    this.#core.publish();
  }

  leadResult(result: LeadResult): void {
    noteLead(this.#core, result);
    this.#core.publish();
  }

  /** Faults that come and go within a second, as of a loose lead, are one event of the log or none. */
  #logFaultsSoon(): void {
    if (this.#isFaultLogDue || this.#faults() === this.#faultText) return;
    this.#isFaultLogDue = true;
    this.#core.parts.timers.after(faultMergeMs, () => {
      this.#isFaultLogDue = false;
      this.#core.health.guard(() => this.#logFaults());
    });
  }

  #faults(): string {
    return JSON.stringify(this.#core.board.sensed?.faults ?? []);
  }

  /** A board fault is logged when it comes, changes or goes; it marks the attempt it happens in. */
  #logFaults(): void {
    const { parts, board, work } = this.#core;
    const { run } = work;
    const text = this.#faults();
    if (text === this.#faultText || !parts.records) return;
    const content = { faults: board.sensed?.faults ?? [] };
    if (run && run.state.status !== "handed-in") run.record([{ type: "board-fault", content }], byBench);
    else parts.records.log.append([{ attemptId: null, type: "board-fault", author: byBench, content }]);
    this.#faultText = text;
  }
}
