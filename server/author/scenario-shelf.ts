import { problemLine } from "../../shared/reading/problem.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import { readDraft } from "../../shared/scenario/read-draft.ts";
import type { OwnScenarioRow, OwnScenarioState } from "../../shared/protocol/author-view.ts";
import { inOrder, type ScenarioKit, scenarioKit, type ScenarioLibrary } from "../library.ts";
import type { KeptScenario, KeptScenarios } from "../store/kept-scenarios.ts";
import type { LogReader } from "../store/log-reader.ts";

/** Of a bench's records what its own scenarios lie in. */
interface ShelfRecords {
  logReader: Pick<LogReader, "document">;
  ownScenarios: KeptScenarios;
}

/** A scenario made at this bench, and what it is. */
export interface OwnScenario {
  kit: ScenarioKit;
  state: OwnScenarioState;
}

/**
 * The scenarios a bench offers: those of its folder, and those that were made at it. The latter lie in its log as
 * documents; which of them are in use stands beside it.
 */
export class ScenarioShelf implements ScenarioLibrary {
  readonly #folder: ScenarioLibrary;
  readonly #records: ShelfRecords | undefined;
  readonly #own: Map<string, OwnScenario>;
  #merged: { of: ReadonlyMap<string, ScenarioKit>; kits: ReadonlyMap<string, ScenarioKit> } | undefined;

  /** What of its own cannot be read is left out and said to `note`; its document stays. */
  constructor(
    folder: ScenarioLibrary,
    records: ShelfRecords | undefined,
    note: (line: string) => void = () => {},
  ) {
    this.#folder = folder;
    this.#records = records;
    this.#own = records ? ownOf(records, note) : new Map<string, OwnScenario>();
  }

  get isRead(): boolean {
    return this.#folder.isRead;
  }

  /** All that can be started at the bench; another map whenever there are others. */
  get kits(): ReadonlyMap<string, ScenarioKit> {
    const { kits: of } = this.#folder;
    if (this.#merged?.of === of) return this.#merged.kits;
    const shown = [...this.#own.values()].filter(({ state }) => state !== "draft").map(({ kit }) => kit);
    const kits =
      shown.length === 0
        ? of
        : new Map([...of.values(), ...shown].sort(inOrder).map((kit) => [kit.scenario.id, kit]));
    this.#merged = { of, kits };
    return kits;
  }

  /** Those that were made here, the last changed in its place by id. */
  get own(): ReadonlyMap<string, OwnScenario> {
    return this.#own;
  }

  /** They as a list shows them. */
  rows(): OwnScenarioRow[] {
    return [...this.#own.values()]
      .sort((a, b) => inOrder(a.kit, b.kit))
      .map(({ kit: { scenario }, state }) => ({
        id: scenario.id,
        title: scenario.title,
        level: scenario.level,
        revision: scenario.revision,
        state,
      }));
  }

  /**
   * Puts a scenario that is in the log's store on the shelf, or changes what it is. What is in work at the bench stays
   * as it was when it began.
   *
   * @throws StoreError; then the shelf is as before.
   */
  keep(kit: ScenarioKit, kept: KeptScenario): void {
    const { id } = kit.scenario;
    this.#records?.ownScenarios.keep(id, kept);
    this.#own.set(id, asState(kit, kept.state));
    this.#merged = undefined;
  }

  /** Takes a scenario off the shelf. Work on it, and its documents, stay. @throws StoreError as `keep` does. */
  withdraw(id: string): void {
    this.#records?.ownScenarios.withdraw(id);
    this.#own.delete(id);
    this.#merged = undefined;
  }
}

const asState = ({ isDraft: _isDraft, ...kit }: ScenarioKit, state: OwnScenarioState): OwnScenario => ({
  kit: state === "offered" ? kit : { ...kit, isDraft: true },
  state,
});

function ownOf(
  { ownScenarios, logReader }: ShelfRecords,
  note: (line: string) => void,
): Map<string, OwnScenario> {
  const own = new Map<string, OwnScenario>();
  for (const [id, { hash, state }] of ownScenarios.all()) {
    const bytes = logReader.document(hash);
    const kit = bytes && scenarioKit(bytes, `${id}.json`, state === "offered" ? readScenario : readDraft);
    if (!kit) note(`the scenario ${id} made at this bench is not in its log; it is left out`);
    else if ("problems" in kit) kit.problems.forEach((problem) => note(problemLine(problem)));
    else own.set(id, asState(kit, state));
  }
  return own;
}
