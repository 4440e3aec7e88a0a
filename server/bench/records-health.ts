import { StoreError } from "../store/store-error.ts";

/** Why a disk takes nothing: there is no room, or it may only be read. */
export type DiskTrouble = "disk-full" | "disk-read-only";

export const diskTroubleOf = ({ code }: StoreError): DiskTrouble =>
  code === "read-only" ? "disk-read-only" : "disk-full";

/** What stands in the way of the records: a disk that takes nothing, a log that is not as it was written. */
export class RecordsHealth {
  #isLogDamaged: boolean;
  /** What the disk does not take now. */
  readonly #refused = new Map<"log" | "memory", DiskTrouble>();
  readonly #note: (sentence: string) => void;
  readonly #changed: () => void;

  /** `changed` is called when there is something else to say. */
  constructor(isLogDamaged: boolean, note: (sentence: string) => void, changed: () => void) {
    this.#isLogDamaged = isLogDamaged;
    this.#note = note;
    this.#changed = changed;
  }

  get isLogDamaged(): boolean {
    return this.#isLogDamaged;
  }

  /** Why the disk takes nothing now; undefined where it does. */
  get diskTrouble(): DiskTrouble | undefined {
    const [first] = this.#refused.values();
    return first;
  }

  /** Does something with the records. What stands in their way is said, not thrown. */
  guard(act: () => void): void {
    try {
      act();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.trouble(error);
    }
  }

  /** Takes note of what stands in the way of the log or of what the bench remembers; undefined once it works. */
  trouble(error: StoreError | undefined, of: "log" | "memory" = "log"): void {
    const { diskTrouble, isLogDamaged } = this;
    if (error) this.#note(`records: ${error.message}`);
    if (error && error.code !== "damaged") this.#refused.set(of, diskTroubleOf(error));
    else this.#refused.delete(of);
    this.#isLogDamaged ||= error?.code === "damaged";
    if (diskTrouble !== this.diskTrouble || isLogDamaged !== this.isLogDamaged) this.#changed();
  }

  /** A record of the log is not as it was written: said from now on, and the work goes on. */
  markDamaged(): void {
    this.#isLogDamaged = true;
    this.#changed();
  }
}
