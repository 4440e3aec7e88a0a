import { sealForCentre } from "../centre/centre-key.ts";
import { type PeopleMessage, peopleLimits, signedOf } from "../centre/centre-messages.schema.ts";
import type { Timers } from "../clock/clock.ts";
import { Repeating } from "../clock/repeating.ts";
import type { ListedPerson } from "../people/other-people.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { LogSigner } from "../store/log-signer.ts";
import { hashOfBytes, hexOf } from "../store/row-hash.ts";
import type { PeopleLink } from "./centre-link.ts";

export interface PeopleOutboxParts {
  benchId: string;
  /** Everybody on the list who is no invention, and a number that is another whenever the list is. */
  people: { readonly revision: number; list: { listed: () => ListedPerson[] } };
  logReader: Pick<LogReader, "lastRow">;
  signer: Pick<LogSigner, "signatureOf">;
  link: PeopleLink;
  /** The public half of the centre's key. */
  centreKey: string;
  timers: Timers;
  note: (sentence: string) => void;
}

const lookEveryMs = 10_000;
const firstRetryMs = 1000;
const longestRetryMs = 300_000;

/** Brings a bench's list of people to its centre, each sealed for the centre's key alone; again whenever it is another. */
export class PeopleOutbox {
  readonly #parts: PeopleOutboxParts;
  #sentRevision: number | undefined;
  #isNoted = false;
  readonly #loop: Repeating;

  constructor(parts: PeopleOutboxParts) {
    this.#parts = parts;
    this.#loop = new Repeating({
      timers: parts.timers,
      go: () => this.#go(),
      failed: ({ message }) => this.#say(`the list of people did not get there (${message})`),
      firstRetryMs,
      longestRetryMs,
    });
  }

  /** True where the list as it is now is at the centre, as far as the bench knows. */
  get isAllSent(): boolean {
    return this.#sentRevision === this.#parts.people.revision;
  }

  start(): void {
    this.#loop.start();
  }

  /** Starts nothing more, and waits for what is on its way. */
  stop(): Promise<void> {
    return this.#loop.stop();
  }

  async #go(): Promise<number> {
    if (!this.isAllSent) await this.#send();
    return lookEveryMs;
  }

  /** Sends the list, and whom the centre wants sealed, some at a time. */
  async #send(): Promise<void> {
    const { people, benchId, logReader, link, signer, centreKey } = this.#parts;
    const { revision } = people;
    const listed = people.list.listed();
    if (listed.length > peopleLimits.people)
      return this.#say(`the list of people is longer than the centre takes (${peopleLimits.people})`);
    const last = logReader.lastRow(benchId);
    if (!last) return;
    const message: PeopleMessage = {
      benchId,
      asOf: { boot: last.boot, sequence: last.sequence },
      key: centreKey,
      people: listed.map(({ id, role, rowHash }) => ({ personId: id, role, rowHash })),
      sealed: [],
    };
    const byId = new Map(listed.map((person) => [person.id, person]));
    // Each answer wants fewer: who was sent is kept or was erased there.
    for (let wanted: string[] | undefined; wanted?.length !== 0 && !this.#loop.isStopped;) {
      message.sealed = await this.#sealed((wanted ?? []).slice(0, peopleLimits.sealed), byId);
      const body = Buffer.from(JSON.stringify(message));
      const answer = await link(body, signer.signatureOf(signedOf(hexOf(hashOfBytes(body)))));
      if (answer.what === "refused")
        return this.#say(`the centre takes no list of people of this bench (${answer.why})`);
      if (answer.what === "older") return this.#say("the centre has a later list of people of this bench");
      if (wanted && answer.wants.length >= wanted.length) throw new Error("the centre keeps asking");
      wanted = answer.wants;
    }
    this.#isNoted = false;
    this.#sentRevision = revision;
  }

  #sealed(ids: readonly string[], byId: ReadonlyMap<string, ListedPerson>): Promise<PeopleMessage["sealed"]> {
    return Promise.all(
      ids.flatMap((id) => {
        const person = byId.get(id);
        if (!person) return [];
        return [
          sealForCentre(id, person.told, this.#parts.centreKey).then((sealed) => ({ personId: id, sealed })),
        ];
      }),
    );
  }

  /** For the journal: once until it goes again. */
  #say(sentence: string): void {
    if (!this.#isNoted) this.#parts.note(sentence);
    this.#isNoted = true;
  }
}
