import type { Environment } from "../environment.ts";
import type { OpenedRecords } from "../open-records.ts";
import { dataFolder } from "../folders.ts";
import { systemTimers } from "../clock/system-clock.ts";
import { centreLink, peopleLink } from "../outbox/centre-link.ts";
import { Outbox, type OutboxParts, type OutboxState } from "../outbox/outbox.ts";
import type { People } from "../people/people.ts";
import { OtherLogs } from "../store/other-logs.ts";
import type { OtherPeople, OtherPerson } from "../people/other-people.ts";

/** What a bench has to do with its centre: nothing, where none is said. */
export interface WithCentre {
  /** How far the own log is there; undefined where it goes nowhere. */
  outboxState: () => OutboxState | undefined;
  /** Whom the benches know that this desk follows. */
  others: OtherPeople;
  /** Starts sending and following. `changed`: something new of other benches is here. */
  start: (people: People, changed: () => void) => void;
  /** Ends both; what is on its way is waited for. */
  stop: () => Promise<void>;
}

/**
 * Sends the log and the list of people to the centre, where the environment says which, and follows the centre's store,
 * where it is that of its desk. What is written beside a damaged log goes nowhere, and nothing is taken into one.
 */
export function withCentre(
  environment: Environment,
  { records, writing, signer, isBesideDamaged }: OpenedRecords,
  say: (sentence: string) => void,
): WithCentre {
  const note = (sentence: string): void => say(`centre: ${sentence}`);
  const { centre, centreKey, centreStore } = environment;
  const { log, logReader } = records;
  const benchId = log.benchId;
  const timers = systemTimers;
  const running: { stop: () => Promise<void> }[] = [];
  let outbox: Outbox | undefined;
  let followed: OtherPeople | undefined;
  let isStopped = false;

  const send = (address: string, people: People): void => {
    const parts: OutboxParts = { benchId, logReader, signer, link: centreLink(address), timers, note };
    outbox = new Outbox(parts);
    outbox.start();
    running.push(outbox);
    if (centreKey === undefined) return;
    // Loaded where names go anywhere: other benches are spared the memory.
    void import("../outbox/people-outbox.ts").then(({ PeopleOutbox }) => {
      if (isStopped) return;
      const link = peopleLink(address);
      const sending = new PeopleOutbox({ ...parts, people, link, centreKey });
      sending.start();
      running.push(sending);
    });
  };

  const follow = async (store: NonNullable<Environment["centreStore"]>, changed: () => void) => {
    const [{ Pool }, { CentreFollower }, { readCentreKey }] = await Promise.all([
      import("pg"),
      import("./centre-follower.ts"),
      import("./centre-key.ts"),
    ]);
    if (isStopped) return;
    const key = readCentreKey(dataFolder(environment.data));
    if (!key)
      note("there is no key of the centre in the data folder: people are told apart by the end of their ids");
    const pool = new Pool({ connectionString: store.connection, max: 2 });
    // A connection that waits and is lost is made anew with the next look.
    pool.on("error", () => undefined);
    const logs = new OtherLogs(writing, writing.name, benchId);
    const follower = new CentreFollower({ pool, centre: store.centre, logs, key, timers, note, changed });
    followed = follower;
    follower.start();
    running.push({ stop: () => follower.stop().then(() => pool.end()) });
  };

  return {
    outboxState: () => outbox?.state,
    others: {
      all: (): readonly OtherPerson[] => followed?.all() ?? [],
      byId: (id) => followed?.byId(id),
    },
    start: (people, changed) => {
      if (isBesideDamaged) return;
      if (centre !== undefined) send(centre, people);
      if (centreStore) follow(centreStore, changed).catch((error: unknown) => note((error as Error).message));
    },
    stop: async () => {
      isStopped = true;
      await Promise.all(running.map((one) => one.stop()));
    },
  };
}
