import type { LogRow } from "../../shared/protocol/log-row.ts";
import { documentsNamedIn } from "./named-documents.ts";
import { hashOfRow, noHash } from "./row-hash.ts";
import { Seals } from "./seal-fault.ts";

/** The last row of a bench that was proved, and how many of its rows were. */
export type ChainEnd = Pick<LogRow, "benchId" | "boot" | "sequence" | "hash"> & { rowCount: number };

const isSame = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

/** A record of the log as it is named where something is wrong with it. */
export const nameOfRow = (benchId: unknown, boot: unknown, sequence: unknown): string =>
  `bench ${String(benchId)}, boot ${String(boot)}, event ${String(sequence)}`;

/** Proves the rows of a log one after the other, each against the one before: place, hash before, its own, seals. */
export class ChainProof {
  #end: ChainEnd | undefined;
  readonly #seals = new Seals();
  readonly #hasDocument: (hash: string) => boolean;

  /** `hasDocument` says whether the document of a hash, in hexadecimal, is kept. */
  constructor(hasDocument: (hash: string) => boolean) {
    this.#hasDocument = hasDocument;
  }

  /** Where the proof stands; undefined before the first row. */
  get end(): ChainEnd | undefined {
    return this.#end;
  }

  get publicKey(): string | undefined {
    return this.#seals.publicKey;
  }

  /** What is wrong with a row as the next one, in words; undefined where nothing is, and then it was taken in. */
  fault(row: LogRow): string | undefined {
    const before = this.#end?.benchId === row.benchId ? this.#end : undefined;
    const isNextBoot = row.sequence === 0 && row.boot > (before?.boot ?? 0);
    const isNext = before && row.boot === before.boot && row.sequence === before.sequence + 1;
    if (!isNext && !isNextBoot) return "a record before it is missing";
    if (!isSame(row.previousHash, before?.hash ?? noHash)) return "it does not follow the record before it";
    if (!isSame(hashOfRow(row), row.hash)) return "its content is not what was written";
    const lost = documentsNamedIn(row).find(({ hash }) => !this.#hasDocument(hash));
    if (lost) return `the ${lost.what} it was made with is missing`;
    const unsealed = this.#seals.fault(row);
    if (unsealed) return unsealed;
    const { benchId, boot, sequence, hash } = row;
    this.#end = { benchId, boot, sequence, hash, rowCount: (before?.rowCount ?? 0) + 1 };
    return undefined;
  }
}
