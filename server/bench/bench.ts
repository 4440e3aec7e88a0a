import type { BenchCommand, BenchCommandName } from "../../shared/protocol/commands.schema.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { Answer } from "../../shared/protocol/socket-events.ts";
import { rulePackText } from "../../shared/rules/rule-pack-text.ts";
import { decide, type Situation } from "../attempt/decide.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { settingName } from "../attempt/attempt-state.ts";
import { hintText } from "../attempt/hint-text.ts";
import { planSheetOf } from "../attempt/plan-sheet.ts";
import { startSelfCheck, testLead, walkTest } from "./board-check.ts";
import { matchAsFound, plug, plugCable, pull, undo } from "./board-commands.ts";
import { BenchCore, type BenchParts } from "./bench-core.ts";
import { endRun } from "./end-run.ts";
import { attemptOnBench } from "./resume-attempt.ts";
import { signIn, signOut } from "./session-commands.ts";
import { isOwnAttempt, startAttempt } from "./start-attempt.ts";
import { BenchLoop } from "./bench-loop.ts";
import { done, refuse, type Refusal } from "../refusal.ts";
import { StoreError } from "../store/store-error.ts";

type Handled = { ok: true } | Refusal;
type Handler<Name extends BenchCommandName> = (command: BenchCommand<Name>) => Handled | Promise<Handled>;

/** One bench: takes commands one after another, each answered when what it changed is durable. */
export class Bench {
  readonly core: BenchCore;
  readonly #loop: BenchLoop;
  #queue: Promise<unknown> = Promise.resolve();

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
        const content = { softwareVersion, ...pack, board: board.id, boardHash, isSimulated };
        records.log.append([{ attemptId: null, type: "boot", author: byBench, content }]);
      });
    }
    this.#loop.start();
  }

  /** Answers a command whose form has been checked. A refused one has changed nothing. */
  handle<Name extends BenchCommandName>(name: Name, command: BenchCommand<Name>): Promise<Answer> {
    const answer = this.#queue.then(() => this.#answer(name, command));
    this.#queue = answer;
    return answer;
  }

  /** Puts what is sensed but not yet logged on the disk and waits for nothing more. */
  async stop(): Promise<void> {
    await this.#queue;
    await this.core.parts.port.close();
    this.core.health.guard(() => this.core.work.run?.stop());
    this.core.session.stop();
  }

  async #answer<Name extends BenchCommandName>(name: Name, command: BenchCommand<Name>): Promise<Answer> {
    try {
      const handler = this.#handlers[name] as Handler<Name>;
      const answer = await handler(command);
      if (answer.ok) this.core.publish();
      return answer;
    } catch (error) {
      if (error instanceof StoreError) {
        this.core.health.trouble(error);
        return refuse(error.code === "damaged" ? "log-damaged" : "disk-full");
      }
      this.core.parts.note(
        `${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
      );
      return refuse("server-error");
    }
  }

  /** Does something with the attempt of the person at the bench. */
  #withRun(act: (run: AttemptRun) => Handled | Promise<Handled>): Handled | Promise<Handled> {
    const { core } = this;
    const { run } = core.work;
    if (!core.session.person) return refuse("not-signed-in");
    return run && isOwnAttempt(core) ? act(run) : refuse("no-attempt");
  }

  readonly #handlers: { [Name in BenchCommandName]: Handler<Name> } = {
    "set-language": ({ language }) => {
      this.core.session.remember({ language });
      return done;
    },
    "set-large": ({ isLarge }) => {
      this.core.session.remember({ isLarge });
      return done;
    },
    "sign-in": (command) => signIn(this.core, command),
    "sign-out": () => signOut(this.core),
    "start-attempt": (command) => startAttempt(this.core, command),
    "leave-attempt": () =>
      this.#withRun(() => {
        endRun(this.core, "left");
        return done;
      }),
    plug: (command) => this.#withRun((run) => plug(this.core, run, command)),
    "plug-cable": (command) => this.#withRun((run) => plugCable(this.core, run, command)),
    pull: (command) => this.#withRun((run) => pull(this.core, run, command)),
    "match-as-found": () => this.#withRun((run) => matchAsFound(this.core, run)),
    undo: () => this.#withRun((run) => undo(this.core, run)),
    probe: ({ probe, at }) => {
      const { isSimulated, port } = this.core.parts;
      const move = () => (isSimulated ? port.request({ type: "probe", probe, at }) : refuse("real-board"));
      // A walk along the board needs no work on it.
      return this.core.board.walk?.isOn ? move() : this.#withRun(move);
    },
    "self-check": () => startSelfCheck(this.core),
    "walk-test": (command) => walkTest(this.core, command),
    "test-lead": (command) => testLead(this.core, command),
    "ask-verdict": (command) => this.#withRun((run) => this.#ask(run, command)),
    "accept-caution": (command) => this.#decide("accept-caution", command),
    "go-to-step": (command) => this.#decide("go-to-step", command),
    "dead-act": (command) => this.#decide("dead-act", command),
    "declare-dead": (command) => this.#decide("declare-dead", command),
    "answer-plan": (command) => this.#decide("answer-plan", command),
    declare: (command) => this.#decide("declare", command),
    "ask-hint": (command) => this.#decide("ask-hint", command),
    "record-reading": (command) => this.#decide("record-reading", command),
    "take-back": (command) => this.#decide("take-back", command),
    // What is kept of these is the board at rest, never a plug half in.
    ready: (command) => this.#atRest(() => this.#decide("ready", command)),
    "hand-in": (command) => this.#atRest(() => this.#decide("hand-in", command)),
  };

  #atRest(act: () => Handled | Promise<Handled>): Handled | Promise<Handled> {
    const { board } = this.core;
    if (!board.isReady) return refuse("no-board");
    return board.isSettled ? act() : refuse("unsettled");
  }

  #decide<Name extends Parameters<typeof decide>[1]>(name: Name, command: BenchCommand<Name>) {
    return this.#withRun((run) => {
      const before = run.state.declared;
      const decision = decide(this.#situation(run), name, command);
      if (!decision.ok) return decision;
      run.record(decision.events, this.core.session.author);
      for (const event of decision.events)
        if (event.type === "setting") {
          const { subject, key } = event.content;
          const was = before.get(settingName(subject, key))?.value ?? null;
          this.core.work.addUndo({ kind: "setting", setting: { subject, key }, before: was });
        }
      return done;
    });
  }

  #situation(run: AttemptRun): Situation {
    return {
      state: run.state,
      scenario: run.kit.stripped,
      plugged: run.plugged,
      cables: run.cables.map(({ id }) => id),
      planQuestions: planSheetOf(run.kit).questions.map(({ question }) => question),
      judged: () => {
        const { verdict, wiringHash } = run.judged();
        return { verdict, wiringHash };
      },
      hint: (number) => hintText(run.kit.scenario, run.judged(), number),
    };
  }

  /** Answers at once where the board is at rest; else the verdict comes when it is. */
  #ask(run: AttemptRun, command: BenchCommand<"ask-verdict">): Handled {
    const { core } = this;
    // What cannot be sensed is not judged, however sound it was when it was last seen.
    if (!core.board.isReady) return refuse("no-board");
    const decision = decide(this.#situation(run), "ask-verdict", command);
    if (!decision.ok) return decision;
    if (!core.board.isSettled) {
      core.work.ask();
      return done;
    }
    core.work.answer();
    run.record(decision.events, core.session.author);
    return done;
  }

  /** The board is at rest: what was held back until now is judged and shown. */
  #settled(): void {
    const { core } = this;
    const { run, isAsked } = core.work;
    if (!isAsked && core.parts.findings === "asked") return;
    core.work.answer();
    if (run && isAsked) core.health.guard(() => void this.#ask(run, {}));
    core.publish();
  }
}
