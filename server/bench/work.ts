import type { BoardLeads } from "../../shared/board/board-leads.ts";
import type { CableId, StationId } from "../../shared/board/ids.ts";
import type { Fact } from "../../shared/protocol/bench-view.ts";
import type { SettingKey } from "../../shared/protocol/attempt-words.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";

/** What undo takes back: the leads as they were with the sizes declared for them, or a size or setting as it was. */
export type Undo =
  | { kind: "leads"; before: BoardLeads; sizes: ReadonlyMap<CableId, Fact> }
  | {
      kind: "setting";
      setting: { subject: CableId | StationId; key: SettingKey };
      before: Fact | null;
    };

/** The work that lies on the bench: its attempt, what undo takes back, whether a verdict is waited for. */
export class Work {
  #run: AttemptRun | undefined;
  #toResume: AttemptState | undefined;
  #undos: readonly Undo[] = [];
  #isAsked = false;

  get run(): AttemptRun | undefined {
    return this.#run;
  }

  /** An attempt of before the start, until the board has been sensed. */
  get toResume(): AttemptState | undefined {
    return this.#toResume;
  }

  /** The attempt that lies on the bench, whether or not the board has been sensed since the start. */
  get state(): AttemptState | undefined {
    return this.#run?.state ?? this.#toResume;
  }

  /** True while somebody's work lies on the bench that is neither handed in nor left. */
  get isOpen(): boolean {
    const status = this.state?.status;
    return status === "open" || status === "ready";
  }

  /** True while somebody's assessed work lies open on the bench, whoever stands at it. */
  get isAssessed(): boolean {
    return this.isOpen && this.state?.mode === "assessed";
  }

  /** What can be taken back, the last at the end. */
  get undos(): readonly Undo[] {
    return this.#undos;
  }

  /** A verdict was asked for while a plug may have been half in. */
  get isAsked(): boolean {
    return this.#isAsked;
  }

  /** Work of before the start waits for the board. */
  waitWith(state: AttemptState): void {
    this.#toResume = state;
  }

  /** What waited goes on, or where it cannot, waits no more. */
  goOn(run: AttemptRun | undefined): void {
    this.#run = run;
    this.#toResume = undefined;
  }

  begin(run: AttemptRun | undefined): void {
    this.#run = run;
    this.forgetUndos();
    this.#isAsked = false;
  }

  /** Nothing lies on the bench any more. */
  end(): void {
    this.begin(undefined);
  }

  addUndo(undo: Undo): void {
    this.#undos = [...this.#undos, undo];
  }

  dropLastUndo(): void {
    this.#undos = this.#undos.slice(0, -1);
  }

  forgetUndos(): void {
    this.#undos = [];
  }

  /** A verdict is asked for once the board is at rest. */
  ask(): void {
    this.#isAsked = true;
  }

  /** Nothing is waited for: it was answered, or cannot be. */
  answer(): void {
    this.#isAsked = false;
  }
}
