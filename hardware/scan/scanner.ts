import { CauselessMisreads } from "./causeless-misreads.ts";
import { decode, decodeOnce } from "./decode.ts";
import type { LineIndex } from "../lines/line-index.ts";
import {
  copyModel,
  distrustLargeGroups,
  emptyModel,
  joinedGroups,
  type LineModel,
  membersByGroup,
  misfits,
  sameSensing,
} from "../lines/line-model.ts";
import type { LineReading, Lines } from "../lines/lines.ts";
import { LooseLines } from "./loose-lines.ts";
import { type Evidence, patternOf, type Scan } from "./patterns.ts";
import { selfCheck, type SelfCheckResult } from "../health/self-check.ts";
import { nameStuckHigh } from "../health/stuck-high.ts";
import type { SensedLines } from "./sensed-lines.ts";
import { changedLines, targetedDecode } from "./targeted-decode.ts";
import { watchPatterns } from "./watch-patterns.ts";
import { watchPauseMs } from "./watch-pause.ts";

export type ScannerEvent =
  | { type: "sensed"; sensed: SensedLines }
  | { type: "self-check-progress"; doneCount: number; totalCount: number }
  | ({ type: "self-check-result" } & SelfCheckResult);

export interface ScanStep {
  events: ScannerEvent[];
  /** How long nothing needs to be done; 0 while a decode is under way. */
  waitMs: number;
}

/** Lines that read otherwise than foretold, what was read, and the pattern that is pulled and not yet read. */
interface Misread {
  suspects: LineIndex[];
  carried: Evidence[];
  inFlight: Uint8Array;
}

/** A plug is taken to be fully in after this long without a change. */
const settledAfterMs = 400;
const restAfterMs = 60_000;
const usualActivePauseMs = 2;
/** How often lines left out as unsteady, or a board that could not be decoded, are tried again. */
const unsteadyRetryMs = 1_000;
/** So many decodes refused in a row, each of several attempts, and the board is not believed. */
const rejectedToDoubt = 2;
/** A noisy board is believed again after this long without a misread, and a decode that is accepted. */
const quietToBelieveMs = 2_000;
/**
 * Keeps watch over a board, one pattern a step, and says what it senses each time that differs. It has no clock:
 * every step is told the time. A misread during the watch is decoded with a few patterns aimed at the lines that
 * misread; a full decode is taken at the start and where that does not explain the readings.
 */
export class Scanner {
  readonly #lines: Lines;
  readonly #activePauseMs: number;
  readonly #probes: readonly LineIndex[];
  readonly #largestGroup: number;
  readonly #scan: Generator<Uint8Array, never, LineReading>;
  #next: Uint8Array;
  #nowMs = 0;
  #waitMs = 0;
  #events: ScannerEvent[] = [];

  #model: LineModel;
  #codes: Uint8Array;
  readonly #looseLeads = new LooseLines();
  #tied: readonly (readonly LineIndex[])[] = [];
  #neverPull: ReadonlySet<LineIndex> = new Set();
  #triedAgainMs = 0;
  /** Lines left out as unsteady that were so again when tried. */
  #confirmedUnsteady: ReadonlySet<LineIndex> = new Set();
  #rejectedCount = 0;
  #isNoisy = false;
  #misreadMs = 0;
  readonly #causeless = new CauselessMisreads();
  #hurriedPatterns = 0;
  #isSelfCheckWanted = false;
  #isLetGoWanted = false;
  /** True where nothing is pulled: the board may be used for something else until the next step. */
  isReleased = true;

  #shown: { model: LineModel; codes: Uint8Array } | undefined;
  #looseShownCount = 0;
  #isSettled = false;
  #changedMs = 0;
  #activeMs: number | undefined;

  /** How long an exchange takes on this board, as far as is known: the watch at rest goes by it. */
  exchangeMs = 0;
  /** Patterns pulled since the start, and decodes taken: they show that the loop turns. */
  patternCount = 0;
  fullDecodeCount = 0;
  targetedDecodeCount = 0;

  /**
   * @param activePauseMs between two patterns of the watch while the board is in use
   * @param probes lines that are no contact: what lies on them is no tie
   * @param largestGroup so many joined lines one output surely pulls
   */
  constructor(
    lines: Lines,
    {
      activePauseMs = usualActivePauseMs,
      probes = [],
      largestGroup = Infinity,
    }: {
      activePauseMs?: number | undefined;
      probes?: readonly LineIndex[];
      largestGroup?: number | undefined;
    } = {},
  ) {
    this.#largestGroup = largestGroup;
    this.#activePauseMs = activePauseMs;
    this.#probes = probes;
    this.#lines = lines;
    this.#model = emptyModel(lines.lineCount);
    this.#codes = new Uint8Array(lines.codeCount);
    this.#scan = this.#run();
    this.#next = this.#scan.next().value;
  }

  /**
   * Does the next exchange with the board.
   *
   * @throws LinesError when a pin cannot be read or written.
   */
  step(nowMs: number): ScanStep {
    this.#nowMs = nowMs;
    this.#activeMs ??= nowMs;
    this.#waitMs = 0;
    const reading = this.#lines.exchange(this.#next);
    this.isReleased = !this.#next.includes(1);
    this.patternCount += 1;
    this.#next = this.#scan.next(reading).value;
    this.#settle();
    const events = this.#events;
    this.#events = [];
    return { events, waitMs: this.#waitMs };
  }

  /**
   * Watches without a pause for two rounds: something is known to be changing (a simulated lead), and until they
   * are over the board is not at rest. What changes by such hands, however fast, is no loose contact.
   */
  hurry(nowMs: number): void {
    this.#activeMs = nowMs;
    this.#changedMs = nowMs;
    this.#isSettled = false;
    this.#looseLeads.forgiveDecodes();
    this.#hurriedPatterns = 2 * (watchPatterns(this.#model, 0).length + 1);
  }

  /** Lets go of every line before long, for a step: see `isReleased`. */
  letGo(): void {
    this.#isLetGoWanted = true;
  }

  /** Checks every line of an empty board, one at a time; the result comes as an event. */
  startSelfCheck(): void {
    this.#isSelfCheckWanted = true;
    this.#hurriedPatterns = watchPatterns(this.#model, 0).length + 1;
  }

  *#run(): Generator<Uint8Array, never, LineReading> {
    yield* this.#decodeAll(new Set());
    for (;;) {
      const misread = yield* this.#watch();
      if (misread !== undefined) yield* this.#explain(misread);
      if (this.#isSelfCheckWanted) yield* this.#checkAll();
      yield* this.#tryUnsteadyAgain();
    }
  }

  /**
   * Cycles through the bits of the groups' numbers, one end of each group whose bit is 1 pulled, until a reading
   * is not as foretold. A change is seen after 2 patterns on average and after all bits at the latest.
   */
  *#watch(): Scan<Misread | undefined> {
    const released = patternOf(this.#lines.lineCount, []);
    const patternsOf = this.#patternsByTurn();
    let pulled = released;
    let isOver = false;
    for (let turn = 0; !isOver; turn += 1) {
      const patterns = patternsOf(turn);
      for (const next of this.#lines.codeCount > 0 ? [...patterns, released] : patterns) {
        const reading = yield next;
        if (pulled === released) this.#believeCodes(reading.codes);
        const misreading = misfits(this.#model, pulled, reading.lines);
        if (misreading.length > 0) this.#misreadMs = this.#nowMs;
        this.#looseLeads.noteMisreads(misreading, this.#nowMs);
        const suspects = misreading.filter((line) => this.#looseLeads.mayDecode(line, this.#nowMs));
        if (suspects.length > 0)
          return { suspects, carried: [{ pulled, reading: reading.lines }], inFlight: next };
        this.#pause();
        this.#letGoOfLoose();
        pulled = next;
      }
      isOver = this.#isSelfCheckWanted || this.#isLetGoWanted || this.#isRetryDue();
    }
    this.#isLetGoWanted = false;
    if (pulled !== released) yield released;
    return undefined;
  }

  /**
   * The patterns of the watch while the model stays as it is. In a board that is in order no group has more than two
   * lines: then every other turn is the same, and it is worked out once, for a board may be at rest for hours.
   */
  #patternsByTurn(): (turn: number) => readonly Uint8Array[] {
    if (membersByGroup(this.#model).some((group) => group.length > 2))
      return (turn) => watchPatterns(this.#model, turn);
    const turns = [watchPatterns(this.#model, 0), watchPatterns(this.#model, 1)] as const;
    return (turn) => turns[turn % 2 === 0 ? 0 : 1];
  }

  *#explain(misread: Misread): Scan<void> {
    this.#activeMs = this.#nowMs;
    let { suspects, carried, inFlight } = misread;
    const before = this.#model;
    const looked = new Set<LineIndex>();
    while (suspects.length > 0) {
      this.targetedDecodeCount += 1;
      const lines = new Set(suspects);
      const noted = this.#noteDecode(lines);
      const found = yield* targetedDecode(this.#model, lines, this.#neverPull, carried, inFlight);
      if (found.isStray) {
        // As much of a sign of a loose contact as a full decode that finds nothing.
        this.#noteDecode(lines);
        if (this.#causeless.note(misread.suspects, this.#nowMs)) this.#doubt(true);
        return;
      }
      if (found.model === undefined || suspects.some((line) => looked.has(line))) {
        yield* this.#decodeAll(lines);
        const isAsBefore = sameSensing(before, this.#model);
        if (isAsBefore && this.#causeless.note(misread.suspects, this.#nowMs)) this.#doubt(true);
        return;
      }
      this.#believe(found.model, noted);
      suspects.forEach((line) => looked.add(line));
      suspects = found.leftOver.filter((line) => this.#looseLeads.mayDecode(line, this.#nowMs));
      inFlight = patternOf(this.#lines.lineCount, []);
      carried = [];
    }
  }

  *#decodeAll(suspects: ReadonlySet<LineIndex>): Scan<void> {
    this.fullDecodeCount += 1;
    const noted = this.#noteDecode(suspects);
    const found = yield* decode(this.#lines.lineCount, {
      neverPull: this.#neverPull,
      distrusted: unsteadyLines(this.#model),
    });
    // One picture of both: at the start codes without their leads would look like a board that was emptied.
    this.#noteCodes(found.codes);
    if (found.isAccepted) {
      this.#rejectedCount = 0;
      this.#believe(found.model, noted);
    } else {
      this.#rejectedCount += 1;
      this.#looseLeads.noteDecode(found.misfits, this.#nowMs);
      this.#doubt(this.#isNoisy || this.#rejectedCount >= rejectedToDoubt);
    }
    this.#triedAgainMs = this.#nowMs;
  }

  *#tryUnsteadyAgain(): Scan<void> {
    if (!this.#isRetryDue()) return;
    this.#triedAgainMs = this.#nowMs;
    this.fullDecodeCount += 1;
    const noted = this.#noteDecode(unsteadyLines(this.#model));
    const found = yield* decodeOnce(this.#lines.lineCount, { neverPull: this.#neverPull });
    this.#rejectedCount = found.isAccepted ? 0 : this.#rejectedCount + 1;
    const isQuiet = this.#nowMs - this.#misreadMs >= quietToBelieveMs;
    const isRejected = this.#rejectedCount >= rejectedToDoubt && this.#shown === undefined;
    this.#doubt(isRejected || (this.#isNoisy && !(found.isAccepted && isQuiet)));
    this.#confirmedUnsteady = found.isAccepted ? new Set() : unsteadyLines(this.#model);
    if (found.isAccepted) this.#believe(found.model, noted);
    this.#show();
  }

  #isRetryDue(): boolean {
    if (this.#nowMs - this.#triedAgainMs < unsteadyRetryMs) return false;
    return this.#isNoisy || this.#shown === undefined || this.#model.hearing.includes("unsteady");
  }

  *#checkAll(): Scan<void> {
    this.#isSelfCheckWanted = false;
    const totalCount = this.#lines.lineCount;
    const found = yield* selfCheck(
      totalCount,
      (doneCount) => this.#events.push({ type: "self-check-progress", doneCount, totalCount }),
      this.#probes,
    );
    this.#tied = found.tied;
    this.#neverPull = new Set(found.tied.flat());
    yield* this.#decodeAll(new Set());
    this.#events.push({ type: "self-check-result", ...found });
  }

  /** Puts a decode down to the lines it looks at and those they are thought to be joined to. */
  #noteDecode(lines: ReadonlySet<LineIndex>): ReadonlySet<LineIndex> {
    const noted = new Set(
      membersByGroup(this.#model)
        .filter((group) => group.some((line) => lines.has(line)))
        .flat(),
    );
    this.#looseLeads.noteDecode(noted, this.#nowMs);
    return noted;
  }

  #believe(model: LineModel, noted: ReadonlySet<LineIndex>): void {
    nameStuckHigh(this.#model, model);
    if (this.#shown !== undefined)
      this.#looseLeads.noteDecode(
        [...changedLines(this.#model, model)].filter((line) => !noted.has(line)),
        this.#nowMs,
      );
    this.#model = model;
    this.#show();
  }

  #believeCodes(codes: Uint8Array): void {
    if (this.#noteCodes(codes)) this.#show();
  }

  #noteCodes(codes: Uint8Array): boolean {
    if (codes.every((code, index) => code === this.#codes[index])) return false;
    this.#codes = codes.slice();
    this.#activeMs = this.#nowMs;
    return true;
  }

  /** The belief as it may be told: what keeps changing is unknown, and is called loose once that is sure. */
  #tellable(): LineModel {
    const model = copyModel(this.#model);
    distrustLargeGroups(model, this.#largestGroup);
    if (this.#isNoisy) model.unknown.fill(1);
    for (const line of unsteadyLines(model))
      if (!this.#confirmedUnsteady.has(line)) model.health[line] = "healthy";
    for (const line of this.#looseLeads.looseLines(this.#nowMs)) {
      model.unknown[line] = 1;
      if (model.health[line] === "healthy") model.health[line] = "loose-contact";
    }
    return model;
  }

  #doubt(isNoisy: boolean): void {
    if (isNoisy === this.#isNoisy) return;
    this.#isNoisy = isNoisy;
    this.#show();
  }

  #letGoOfLoose(): void {
    if (this.#looseLeads.looseLines(this.#nowMs).size !== this.#looseShownCount) this.#show();
  }

  #show(): void {
    this.#looseShownCount = this.#looseLeads.looseLines(this.#nowMs).size;
    const model = this.#tellable();
    const isSame =
      this.#shown !== undefined &&
      sameSensing(this.#shown.model, model) &&
      this.#shown.codes.every((code, index) => code === this.#codes[index]);
    if (isSame) return;
    this.#shown = { model, codes: this.#codes };
    this.#isSettled = false;
    this.#changedMs = this.#nowMs;
    this.#tell();
  }

  #settle(): void {
    const isResting = this.#hurriedPatterns === 0 && this.#nowMs - this.#changedMs >= settledAfterMs;
    if (this.#shown === undefined || this.#isSettled || !isResting) return;
    this.#isSettled = true;
    this.#tell();
  }

  #tell(): void {
    const { model, codes } = this.#shown!;
    this.#events.push({
      type: "sensed",
      sensed: {
        groups: joinedGroups(model),
        health: model.health,
        tied: this.#tied,
        unknown: model.unknown,
        codes,
        isSettled: this.#isSettled,
        isNoisy: this.#isNoisy,
        sensedAtMs: this.#nowMs,
      },
    });
  }

  #pause(): void {
    if (this.#hurriedPatterns > 0) {
      this.#hurriedPatterns -= 1;
      return;
    }
    const isAtRest = this.#nowMs - (this.#activeMs ?? this.#nowMs) >= restAfterMs;
    this.#waitMs = watchPauseMs(isAtRest, this.#activePauseMs, this.exchangeMs);
  }
}

const unsteadyLines = (model: LineModel): ReadonlySet<LineIndex> =>
  new Set([...model.hearing.keys()].filter((line) => model.hearing[line] === "unsteady") as LineIndex[]);
