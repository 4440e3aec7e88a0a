import type { Author } from "../../shared/protocol/author.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { Clock } from "../clock/clock.ts";
import { bytesOfCriteria, type Criteria } from "../desk/criteria.ts";
import type { ScenarioLibrary } from "../library.ts";
import type { LogWriter } from "../store/log-writer.ts";
import type { People } from "../people/people.ts";
import type { LogSigner } from "../store/log-signer.ts";
import { StoreError } from "../store/store-error.ts";
import { type GroupPack, openPack, sealPack } from "./group-pack.ts";
import type { KeptPack, KeptPacks } from "./kept-packs.ts";
import type { KnownLead } from "./lead-book.ts";
import type { SealedPack } from "./lead-messages.schema.ts";
import type { TaskLibrary } from "./task-library.ts";

export interface PackKeeperParts {
  kept: KeptPacks;
  tasks: TaskLibrary;
  people: People;
  benchId: string;
  signer: Pick<LogSigner, "publicKey" | "signatureOf">;
  /** Puts the criteria where the bench finds them at its next start. */
  keepCriteria: (text: string) => void;
  note: (sentence: string) => void;
}

/** What a pack is made of, and what it changes at a bench. */
interface PackedBench {
  readonly parts: {
    criteria: Criteria;
    findings: "asked" | "live";
    readonly records: { readonly log: LogWriter } | undefined;
    readonly scenarios: ScenarioLibrary;
    readonly clock: Clock;
  };
  readonly session: {
    readonly memory: { readonly language: Language };
    remember: (change: { language: Language }) => void;
  };
  readonly work: { readonly isOpen: boolean; readonly toResume: object | undefined };
  readonly health: { guard: (act: () => void) => void };
  publish: () => void;
}

/** Packs are sent by trainers alone. */
const sentBy = ({ by: { session } }: GroupPack): Author => ({ by: "trainer", session });

/** Makes the packs of a lead, and takes those of one: each comes into force between two pieces of work, never within one. */
export class PackKeeper {
  readonly #parts: PackKeeperParts;

  constructor(parts: PackKeeperParts) {
    this.#parts = parts;
    const { pack } = parts.kept.at("inForce") ?? {};
    if (!pack) return;
    parts.tasks.take(pack.tasks.map((text) => Buffer.from(text, "base64")));
    parts.people.pack.useBadgesUnder(Buffer.from(pack.badgeSalt, "base64"));
  }

  /** Which pack is in force, and which waits; 0 and null where there is none. */
  get versions(): { version: number; waiting: number | null } {
    const { kept } = this.#parts;
    return {
      version: kept.at("inForce")?.pack.version ?? 0,
      waiting: kept.at("waiting")?.pack.version ?? null,
    };
  }

  /** The last pack that went out from here. */
  get sent(): KeptPack | undefined {
    return this.#parts.kept.at("sent");
  }

  /** How the findings are shown by the pack in force; undefined where none is. */
  get findings(): "asked" | "live" | undefined {
    return this.#parts.kept.at("inForce")?.pack.settings.findings;
  }

  /** Makes a pack of what this bench works with, newer than the last; the log says who had it made. @throws StoreError */
  make({ parts, session }: PackedBench, by: GroupPack["by"]): KeptPack {
    const { people, benchId, signer, kept } = this.#parts;
    const known = people.pack.forPack();
    if (!known || !parts.records) throw new StoreError("damaged", {});
    const sealed = sealPack(
      {
        format: "spurwise group pack 1",
        leadId: benchId,
        version: (this.sent?.pack.version ?? 0) + 1,
        madeWallMs: Math.round(parts.clock.wallMs()),
        by,
        badgeSalt: Buffer.from(known.badgeSalt).toString("base64"),
        people: known.people,
        erased: known.erased,
        criteria: parts.criteria,
        // What is still tried out at this bench stays here.
        tasks: [...parts.scenarios.kits.values()].flatMap(({ bytes, isDraft }) =>
          isDraft ? [] : [Buffer.from(bytes).toString("base64")],
        ),
        settings: { findings: parts.findings, language: session.memory.language },
      },
      signer,
    );
    const opened = openPack(sealed, signer.publicKey);
    if (!opened) throw new Error("a pack that was just made is none");
    const made = { ...opened, leadKey: signer.publicKey, sealed };
    const content = { version: made.pack.version, pack: made.hash, person: by.person };
    parts.records.log.append([{ attemptId: null, type: "pack-sent", author: sentBy(made.pack), content }]);
    kept.keep("sent", made);
    return made;
  }

  /** Takes a pack of the lead: it waits for the end of the work. One that the lead has not signed, or an older one, is none. */
  take(core: PackedBench, sealed: SealedPack, lead: KnownLead): void {
    const { kept, note } = this.#parts;
    const opened = openPack(sealed, lead.publicKey);
    if (!opened || opened.pack.leadId !== lead.id)
      return note("lead: a pack was refused that the lead has not signed");
    const inForce = kept.at("inForce");
    // Versions of one lead count up; those of another have nothing to do with them.
    const known = [inForce, kept.at("waiting")].filter((one) => one?.leadKey === lead.publicKey);
    if (known.some((one) => (one?.pack.version ?? 0) >= opened.pack.version)) return;
    core.health.guard(() => kept.keep("waiting", { ...opened, leadKey: lead.publicKey, sealed }));
    // Where nobody works it is in force with that.
    core.publish();
  }

  /** Brings the pack that waits into force, where nobody's work lies open. What the disk does not take is tried again. */
  applyIfFree(core: PackedBench): void {
    const waiting = this.#parts.kept.at("waiting");
    if (!waiting || core.work.isOpen || core.work.toResume) return;
    core.health.guard(() => this.#apply(core, waiting));
  }

  #apply(core: PackedBench, waiting: KeptPack): void {
    const { kept, people, tasks, keepCriteria } = this.#parts;
    const { records } = core.parts;
    if (!records) return;
    const { pack, hash, leadKey } = waiting;
    const author = sentBy(pack);
    people.pack.takeOver(pack, author);
    people.pack.useBadgesUnder(Buffer.from(pack.badgeSalt, "base64"));
    const criteria = records.log.keepDocument("criteria", bytesOfCriteria(pack.criteria));
    keepCriteria(`${JSON.stringify(pack.criteria, undefined, 2)}\n`);
    core.parts.criteria = pack.criteria;
    tasks.take(pack.tasks.map((text) => Buffer.from(text, "base64")));
    core.parts.findings = pack.settings.findings;
    core.session.remember({ language: pack.settings.language });
    const { leadId: lead, version, by } = pack;
    const content = { lead, leadKey, version, pack: hash, criteria, person: by.person };
    records.log.append([{ attemptId: null, type: "pack-applied", author, content }]);
    kept.keep("inForce", waiting);
    kept.drop("waiting");
    core.publish();
  }
}
