import { readFileSync } from "node:fs";
import { boardLines } from "../../../hardware/lines/board-lines.ts";
import type { LineIndex } from "../../../hardware/lines/line-index.ts";
import { SimulatedBoard } from "../../../hardware/lines/simulated-board.ts";
import { pictureOf } from "../../../server/attempt/picture-of.ts";
import { pluggedNow } from "../../../server/bench/plugged-now.ts";
import { leadsOfSpecs } from "../../../server/board/leads-of-cables.ts";
import { scenarioKit } from "../../../server/library.ts";
import { cableId } from "../../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../../shared/board/sensed-state.schema.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import { nothingPlugged, type Plugged } from "../../../shared/wiring/plugged.ts";
import { seeded } from "../../seeded.ts";
import { type Disturbance, DisturbedLines } from "../../hardware/scan/disturbed-lines.ts";
import { contact, ProgramBench, shippedBoard } from "../../hardware/scan/program-bench.ts";

const board = shippedBoard("workshop");
const found = scenarioKit(readFileSync("scenarios/extend-a-ring.json"), "extend-a-ring.json");
if ("problems" in found) throw new Error("the scenario cannot be read");
const kit = found;
const [answer] = kit.scenario.modelAnswers;
if (answer === undefined) throw new Error("the scenario has no model answer");
const { cables } = answer;
/** Every cable has its right size, said by the learner. */
const declared = new Map(
  cables.map(({ from, to }) => {
    const subject = cableId(from, to);
    return [`${subject} csaMm2`, { subject, key: "csaMm2", value: 2.5, by: "learner" }] as const;
  }),
);

/** A pattern on 206 lines at the 6 µs a call of a slow board computer. */
const patternMs = 4;

/** What a bench made of the board at a moment. */
export interface Told {
  faults: readonly BoardFault[];
  proposal: Verdict["proposal"];
  findings: readonly string[];
  /** Something changed so lately that nobody is told a finding yet. */
  isHeld: boolean;
}

/**
 * A right ring on the workshop board, sensed by the scanner's own program as on real pins and judged as a bench
 * does, on a clock moved by hand.
 */
export class RingOnABadBoard {
  readonly lines: DisturbedLines;
  readonly simulated = new SimulatedBoard(board);
  readonly #bench: ProgramBench;
  readonly #lines = boardLines(board);
  #plugged: Plugged = nothingPlugged;
  #heardCount = 0;
  readonly #verdicts = new Map<string, Verdict>();
  /** All that was told so far, in its order. */
  readonly told: Told[] = [];

  private constructor(seed: number) {
    this.plugRing();
    this.lines = new DisturbedLines(this.simulated.lines, seeded(seed), () => this.#bench.nowMs);
    this.#bench = new ProgramBench(() => Promise.resolve({ lines: this.lines }), patternMs);
  }

  /** @param disturb what is wrong with the board before it is opened */
  static async wired(
    seed: number,
    disturb?: (ring: RingOnABadBoard) => Disturbance | undefined,
  ): Promise<RingOnABadBoard> {
    const ring = new RingOnABadBoard(seed);
    ring.lines.disturbance = disturb?.(ring);
    await ring.#bench.open(board, { lines: "gpio" });
    return ring.run(2_000);
  }

  plugRing(): this {
    this.simulated.setLeads({ leads: leadsOfSpecs(board, cables), codes: [] });
    return this;
  }

  lineOf(name: string): LineIndex {
    const line = this.#lines.lineOf.get(contact(name));
    if (line === undefined) throw new Error(`no line for ${name}`);
    return line;
  }

  /** Somebody uses the screen. */
  touch(): this {
    this.#bench.program.hear({ type: "attended" });
    return this;
  }

  /** A self-check by somebody who says that all leads are out; gives the faults it names. */
  checkCleared(): BoardFault[] {
    const answers = this.#bench.ask({ type: "self-check", areLeadsOut: true });
    this.run(2_000);
    const result = [...answers, ...this.#bench.sent].find(({ type }) => type === "self-check-result");
    if (result?.type !== "self-check-result") throw new Error("the self-check did not end");
    return result.faults;
  }

  /** Lets time go by and judges each state that was sensed in it. */
  run(forMs: number): this {
    this.#bench.run(forMs);
    for (const message of this.#bench.sent.slice(this.#heardCount))
      if (message.type === "sensed") this.#judge(message.state);
    this.#heardCount = this.#bench.sent.length;
    return this;
  }

  #judge(state: SensedState): void {
    this.#plugged = pluggedNow(this.#plugged, state);
    const key = JSON.stringify(this.#plugged);
    const verdict =
      this.#verdicts.get(key) ??
      pictureOf({ kit, board, judge }, this.#plugged, { declared, readings: [] }).judged().verdict;
    this.#verdicts.set(key, verdict);
    const { proposal, findings } = verdict;
    this.told.push({
      faults: state.faults,
      proposal,
      findings: findings.map(({ id }) => id),
      isHeld: !state.isSettled,
    });
  }
}
