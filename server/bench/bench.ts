import { diskTroubleOf } from "./records-health.ts";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { rulePackText } from "../../shared/rules/rule-pack-text.ts";
import type { ActorSession } from "../acts/actor.ts";
import { acts } from "../acts/acts.ts";
import { doAct } from "../acts/do-act.ts";
import { workStateOf } from "../attempt/work-state.ts";
import { ActQueue } from "./act-queue.ts";
import { BenchCore, type BenchParts } from "./bench-core.ts";
import { BenchLoop } from "./bench-loop.ts";
import { giveVerdict } from "./give-verdict.ts";
import { attemptOnBench } from "./resume-attempt.ts";
import { refuse } from "../refusal.ts";
import { StoreError } from "../store/store-error.ts";
import type { Reply } from "../../shared/protocol/reply.ts";

/**
 * One bench: takes acts one after another, each answered when what it changed is durable. Those that have nothing to do
 * with the board pass those that wait for it.
 */
export class Bench {
  readonly core: BenchCore;
  readonly #loop: BenchLoop;
  readonly #queue = new ActQueue();

  constructor(parts: BenchParts) {
    this.core = new BenchCore(parts, () => this.#settled());
    this.#loop = new BenchLoop(this.core);
  }

  /** Finds what was open before, writes the boot into the log and opens the board. */
  start(): void {
    const { core } = this;
    const { records, boardBytes, board, rulePackVersion, softwareVersion, isSimulated } = core.parts;
    core.session.comeBack();
    if (records) {
      core.health.guard(() => {
        const before = attemptOnBench(records);
        if (before) core.work.waitWith(before);
      });
      core.health.guard(() => {
        const boardHash = records.log.keepDocument("board", boardBytes);
        const rulePackHash = records.log.keepDocument("rule-pack", Buffer.from(rulePackText(), "utf8"));
        const pack = { rulePackVersion, rulePackHash };
        const { publicKey } = records.log;
        const content = {
          softwareVersion,
          ...pack,
          board: board.id,
          boardHash,
          isSimulated,
          ...(publicKey === undefined ? {} : { publicKey }),
        };
        records.log.append([{ attemptId: null, type: "boot", author: byBench, content }]);
      });
    }
    this.#loop.start();
  }

  /** Answers an act whose form has been checked. A refused one has changed nothing. */
  handle<Name extends ActName>(name: Name, message: ActMessage<Name>, session: ActorSession): Promise<Reply> {
    session.touch?.();
    if (session.actor.isRemote !== true) this.core.parts.port.attended();
    // Nobody is kept from signing out or from the keys of the screen by a board that does not answer.
    return this.#queue.do(acts[name].isFree === true, () => this.#answer(name, message, session));
  }

  /** Puts what is sensed but not yet logged on the disk and waits for nothing more. */
  async stop(): Promise<void> {
    await this.#queue.end();
    await this.core.parts.port.close();
    this.core.health.guard(() => this.core.work.run?.stop());
    this.core.landing.end();
    this.core.show.stop();
    this.core.hold.stop();
    this.core.session.stop();
  }

  async #answer<Name extends ActName>(
    name: Name,
    message: ActMessage<Name>,
    session: ActorSession,
  ): Promise<Reply> {
    try {
      const answer = await doAct(this.core, acts[name], message, session.actor);
      if (answer.ok) {
        this.#loop.followProbes();
        this.core.publish();
      }
      return answer;
    } catch (error) {
      if (error instanceof StoreError) {
        this.core.health.trouble(error);
        return refuse(error.code === "damaged" ? "log-damaged" : diskTroubleOf(error));
      }
      this.core.parts.note(
        `${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
      );
      return refuse("server-error");
    }
  }

  /** The board is at rest: what was held back until now is judged and shown. */
  #settled(): void {
    const { core } = this;
    const { run, isAsked } = core.work;
    if (!isAsked && core.parts.findings === "asked") return;
    core.work.answer();
    const isWanted = isAsked && core.board.isReady && workStateOf(run?.state) === "wiring";
    if (run && isWanted) core.health.guard(() => giveVerdict(core, run));
    core.publish();
  }
}
