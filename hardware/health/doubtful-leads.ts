import { byId, type ContactId, type EntryId, entryOf, isFront } from "../../shared/board/ids.ts";
import type { BoardLines } from "../lines/board-lines.ts";

/** Why nobody can be known to have plugged a lead. */
export type DoubtReason =
  /** It was there before anybody touched the board, alone between its entries. */
  | "at-start"
  /** It came when neither the board nor the screen had been touched for an hour. */
  | "nobody-there"
  /** It joins two outputs that stand side by side on the chips. */
  | "neighbours"
  /** It came together with a dead output at one of its ends. */
  | "one-sided"
  /** On a board whose plugs tell their code there is none at either end. */
  | "no-plug";

export interface DoubtfulLead {
  contacts: [ContactId, ContactId];
  reason: DoubtReason;
}

/** What is looked at in a picture of the board. */
interface Picture {
  groups: readonly (readonly ContactId[])[];
  unknown: readonly ContactId[];
  /** Entries with a plug in them that tells its code: copper on the board cannot. */
  codes: readonly { entry: EntryId }[];
  /** Contacts whose output does not pull. */
  deadOutputs: ReadonlySet<ContactId>;
  /** False while a plug may be half in: its cores may be there before its code. */
  isSettled: boolean;
}

const nobodyThereAfterMs = 60 * 60_000;

/**
 * Two outputs that are bridged before their diodes read just like a lead while nothing else is plugged there: either
 * pulls both. What tells them apart is a hand. A join that no hand can be known to have made is doubted until a hand
 * takes it out and puts it in again, or plugs the other cores of its cable.
 */
export class DoubtfulLeads {
  readonly #lineOf: BoardLines["lineOf"];
  readonly #hasCodes: boolean;
  readonly #doubted = new Map<string, DoubtfulLead>();
  /** Joins that were doubted and then seen to part: a bridge does not. */
  readonly #replugged = new Set<string>();
  #before: Picture | undefined;
  #touchedMs = Number.NEGATIVE_INFINITY;

  constructor({ lineOf, codes }: Pick<BoardLines, "lineOf" | "codes">) {
    this.#lineOf = lineOf;
    this.#hasCodes = codes.size > 0;
  }

  /** Somebody is at the bench: the board or the screen was touched. */
  touch(nowMs: number): void {
    this.#touchedMs = nowMs;
  }

  /** Gives the doubtful leads of a picture, in the order of their contacts. */
  look(picture: Picture, nowMs: number): DoubtfulLead[] {
    const pairs = pairsOf(picture);
    const known = this.#before && pairsOf(this.#before);
    const free = (contact: ContactId): boolean =>
      !picture.unknown.includes(contact) && !picture.groups.some((group) => group.includes(contact));
    for (const [key, { contacts }] of this.#doubted)
      if (!pairs.has(key) && contacts.every(free)) {
        this.#doubted.delete(key);
        this.#replugged.add(key);
      } else if (pairs.has(key) && !isAlone(contacts, pairs, picture)) this.#doubted.delete(key);
    for (const [key, contacts] of pairs) {
      if (known?.has(key) || this.#doubted.has(key) || this.#replugged.has(key)) continue;
      const reason = isAlone(contacts, pairs, picture)
        ? this.#reasonFor(contacts, picture, nowMs)
        : undefined;
      if (reason !== undefined) this.#doubted.set(key, { contacts, reason });
    }
    if (
      known !== undefined &&
      (known.size !== pairs.size || [...pairs.keys()].some((key) => !known.has(key)))
    )
      this.touch(nowMs);
    this.#before = picture;
    const doubted = new Map([...this.#withoutPlug(picture, pairs), ...this.#doubted]);
    return [...doubted]
      .filter(([key]) => pairs.has(key))
      .sort(([a], [b]) => byId(a, b))
      .map(([, lead]) => lead);
  }

  /** A plug on a coded board shows itself also where its cores touch nothing; copper on the board has none. */
  #withoutPlug({ codes, isSettled }: Picture, pairs: ReturnType<typeof pairsOf>): [string, DoubtfulLead][] {
    if (!this.#hasCodes || !isSettled) return [];
    const plugged = new Set(codes.map(({ entry }) => entry));
    return [...pairs]
      .filter(([, contacts]) => contacts.every((one) => !isFront(one) && !plugged.has(entryOf(one))))
      .map(([key, contacts]) => [key, { contacts, reason: "no-plug" }]);
  }

  /** Why a lead that is alone between its entries is doubted. */
  #reasonFor(contacts: [ContactId, ContactId], picture: Picture, nowMs: number): DoubtReason | undefined {
    const [lineA, lineB] = contacts.map((contact) => this.#lineOf.get(contact) ?? Number.NaN);
    const before = this.#before;
    if (picture.codes.some(({ entry }) => contacts.some((one) => entryOf(one) === entry))) return undefined;
    if (contacts.some((one) => picture.deadOutputs.has(one) && !wasDead(before, one))) return "one-sided";
    if (Math.abs(lineA! - lineB!) === 1) return "neighbours";
    if (before === undefined) return "at-start";
    return nowMs - this.#touchedMs >= nobodyThereAfterMs ? "nobody-there" : undefined;
  }
}

/** A dead output that is free does not answer at all, so that its contact is unknown. */
const wasDead = (before: Picture | undefined, contact: ContactId): boolean =>
  before !== undefined && (before.deadOutputs.has(contact) || before.unknown.includes(contact));

function pairsOf({ groups }: Picture): Map<string, [ContactId, ContactId]> {
  const pairs = new Map<string, [ContactId, ContactId]>();
  for (const [a, b, ...more] of groups)
    if (a !== undefined && b !== undefined && more.length === 0) pairs.set(`${a} ${b}`, [a, b]);
  return pairs;
}

/** True where no other core lies between the same entries, as a cable has them, and none there is hidden. */
function isAlone(
  contacts: readonly ContactId[],
  pairs: ReadonlyMap<string, readonly ContactId[]>,
  { unknown }: Picture,
): boolean {
  const [entries, between] = [contacts.map(entryOf), entriesOf(contacts)];
  return (
    !unknown.some((contact) => !contacts.includes(contact) && entries.includes(entryOf(contact))) &&
    [...pairs.values()].filter((pair) => entriesOf(pair) === between).length === 1
  );
}

const entriesOf = (contacts: readonly ContactId[]): string => contacts.map(entryOf).sort(byId).join(" ");
