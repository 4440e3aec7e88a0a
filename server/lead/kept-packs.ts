import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { toStoreError } from "../store/store-error.ts";
import { fileModes, writeWhole } from "../store/write-whole.ts";
import { type GroupPack, openPack } from "./group-pack.ts";
import { type SealedPack, sealedPackSchema } from "./lead-messages.schema.ts";

const keptSchema = z.strictObject({ ...sealedPackSchema.shape, leadKey: z.string() });

/** A pack with who signed it. */
export interface KeptPack {
  pack: GroupPack;
  hash: string;
  leadKey: string;
  sealed: SealedPack;
}

const files = {
  inForce: "group-pack.json",
  waiting: "group-pack-waiting.json",
  sent: "group-pack-sent.json",
} as const;
type Place = keyof typeof files;

/** The packs of a data folder: the one in force, one that waits for the end of the work, and the last that was sent. */
export class KeptPacks {
  readonly #folder: string;
  readonly #kept = new Map<Place, KeptPack>();

  constructor(folder: string) {
    this.#folder = folder;
    for (const place of Object.keys(files) as Place[]) {
      const found = this.#read(place);
      if (found) this.#kept.set(place, found);
    }
  }

  at(place: Place): KeptPack | undefined {
    return this.#kept.get(place);
  }

  /** Keeps a pack, on the disk when it returns. @throws StoreError */
  keep(place: Place, kept: KeptPack): void {
    const { sealed, leadKey } = kept;
    try {
      writeWhole(this.#path(place), `${JSON.stringify({ ...sealed, leadKey })}\n`, fileModes.secret);
    } catch (error) {
      throw toStoreError(error, this.#path(place));
    }
    this.#kept.set(place, kept);
  }

  drop(place: Place): void {
    rmSync(this.#path(place), { force: true });
    this.#kept.delete(place);
  }

  #path(place: Place): string {
    return join(this.#folder, files[place]);
  }

  /** A file that was changed, or cannot be read, is none. */
  #read(place: Place): KeptPack | undefined {
    if (!existsSync(this.#path(place))) return undefined;
    try {
      const parsed = parseSafely(keptSchema, JSON.parse(readFileSync(this.#path(place), "utf8")));
      if (!parsed.success) return undefined;
      const { leadKey, ...sealed } = parsed.data;
      const opened = openPack(sealed, leadKey);
      return opened && { ...opened, leadKey, sealed };
    } catch {
      return undefined;
    }
  }
}
