import { inOrder, type ScenarioKit, scenarioKit, type ScenarioLibrary } from "../library.ts";

/** The tasks of a bench: its own, and those of the pack that is in force, which stand in the place of its own of that id. */
export class TaskLibrary implements ScenarioLibrary {
  readonly #own: ScenarioLibrary;
  #packed: readonly ScenarioKit[] = [];
  #made: { of: ScenarioLibrary["kits"]; kits: ScenarioLibrary["kits"] } | undefined;

  constructor(own: ScenarioLibrary) {
    this.#own = own;
  }

  get isRead(): boolean {
    return this.#own.isRead;
  }

  get kits(): ScenarioLibrary["kits"] {
    const { kits } = this.#own;
    if (this.#packed.length === 0) return kits;
    if (this.#made?.of !== kits) {
      const all = new Map(kits);
      for (const kit of this.#packed) all.set(kit.scenario.id, kit);
      const sorted = [...all.values()].sort(inOrder);
      this.#made = { of: kits, kits: new Map(sorted.map((kit) => [kit.scenario.id, kit])) };
    }
    return this.#made.kits;
  }

  /** Takes the tasks of a pack, in the place of those of the one before. A file that cannot be read is left out. */
  take(files: readonly Uint8Array[]): void {
    this.#packed = files.flatMap((bytes) => {
      const kit = scenarioKit(bytes, "task.json");
      return "problems" in kit ? [] : [kit];
    });
    this.#made = undefined;
  }
}
