import type { LogRow } from "../../shared/protocol/log-row.ts";
import { documentsNamedIn } from "./named-documents.ts";
import { hashOfRow, isSameBytes, noHash } from "./row-hash.ts";
import { Seals } from "./seal-fault.ts";

/** The last row of a bench that was proved, and how many of its rows were. */
export type ChainEnd = Pick<LogRow, "benchId" | "boot" | "sequence" | "hash"> & { rowCount: number };

type Place = Pick<LogRow, "boot" | "sequence">;

/** True for the place that comes right after another one of the same bench, or where there is none begins its log. */
export function isNextPlace({ boot, sequence }: Place, before: Place | undefined): boolean {
  if (sequence === 0) return boot > (before?.boot ?? 0);
  return before !== undefined && boot === before.boot && sequence === before.sequence + 1;
}

/** A record of the log as it is named where something is wrong with it. */
export const nameOfRow = (benchId: unknown, boot: unknown, sequence: unknown): string =>
  `bench ${String(benchId)}, boot ${String(boot)}, event ${String(sequence)}`;

/** Where a row stands, with its hash. */
export type PlaceWithHash = Pick<LogRow, "boot" | "sequence" | "hash">;

/**
 * What is wrong with a row as the next one of its bench, in words: its place, the hash before it, its own, and the documents
 * it was made with. Undefined where nothing is.
 */
export function faultAfter(
  before: PlaceWithHash | undefined,
  row: LogRow,
  hasDocument: (hash: string) => boolean,
): string | undefined {
  if (!isNextPlace(row, before)) return "a record before it is missing";
  if (!isSameBytes(row.previousHash, before?.hash ?? noHash))
    return "it does not follow the record before it";
  if (!isSameBytes(hashOfRow(row), row.hash)) return "its content is not what was written";
  const lost = documentsNamedIn(row).find(({ hash }) => !hasDocument(hash));
  return lost && `the ${lost.what} it was made with is missing`;
}

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
    const fault = faultAfter(before, row, this.#hasDocument);
    if (fault) return fault;
    const unsealed = this.#seals.fault(row);
    if (unsealed) return unsealed;
    const { benchId, boot, sequence, hash } = row;
    this.#end = { benchId, boot, sequence, hash, rowCount: (before?.rowCount ?? 0) + 1 };
    return undefined;
  }
}
