import type { AddressInfo } from "node:net";
import { benchNameOf } from "../bench/bench-name.ts";
import { criteriaPath } from "../desk/criteria-file.ts";
import type { Clock } from "../clock/clock.ts";
import { systemTimers } from "../clock/system-clock.ts";
import type { Environment } from "../environment.ts";
import type { OpenedRecords } from "../open-records.ts";
import type { People } from "../people/people.ts";
import type { PinHasher } from "../people/pin-hash.ts";
import { StoreError } from "../store/store-error.ts";
import { writeWhole } from "../store/write-whole.ts";
import { everyAddress } from "../web/origin.ts";
import { takeChannels } from "./channel.ts";
import { LeadNames } from "./find-leads.ts";
import { KeptPacks } from "./kept-packs.ts";
import { LeadBook } from "./lead-book.ts";
import { LeadLink, type LeadLinkParts } from "./lead-link.ts";
import type { LeadParts } from "./lead-parts.ts";
import { logOrder } from "./order-by.ts";
import { PackKeeper } from "./pack-keeper.ts";
import type { TaskLibrary } from "./task-library.ts";
import { Workshop, type WorkshopParts } from "./workshop.ts";

export interface LeadSetting {
  data: string;
  environment: Pick<Environment, "host" | "leadPort">;
  opened: Pick<OpenedRecords, "records" | "signer" | "isBesideDamaged">;
  people: People;
  pins: PinHasher;
  tasks: TaskLibrary;
  /** The network was let in: then benches on it may call, and else those of this machine alone. */
  isNetwork: boolean;
  clock: Clock;
  note: (sentence: string) => void;
}

const loopback = "127.0.0.1";

/**
 * What a bench leads a workshop with and is led by; undefined beside a log that is damaged, or where the file of whom it
 * knows cannot be read, which is said.
 */
export function openLead({
  data,
  environment,
  opened,
  people,
  pins,
  tasks,
  isNetwork,
  clock,
  note,
}: LeadSetting): LeadParts | undefined {
  const { records, signer, isBesideDamaged } = opened;
  if (isBesideDamaged) return undefined;
  let book: LeadBook;
  try {
    book = new LeadBook(data);
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    note(`lead: ${error.message}`);
    return undefined;
  }
  const { benchId } = records.log;
  const name = benchNameOf(benchId);
  const host = isNetwork ? (environment.host ?? everyAddress) : loopback;
  const names = new LeadNames(note);
  const listen: WorkshopParts["listen"] = async (taken) => {
    const server = takeChannels(taken);
    await new Promise<void>((ready, failed) => {
      server.once("error", failed);
      server.listen(environment.leadPort, host, ready);
    });
    const { port } = server.address() as AddressInfo;
    note(`lead: benches find it at port ${port}`);
    // Where the network was not let in, nobody on it is told of this bench; it may still look for others.
    if (isNetwork) void names.publish(name, port);
    server.once("close", () => void names.hide());
    return { server, port };
  };
  const log: WorkshopParts["log"] & LeadLinkParts["log"] = (type, content, by) =>
    logOrder(records.log, type, content, by);
  const ends = { book, benchId, name, signer, pins, timers: systemTimers, note, log };
  const packs = new PackKeeper({
    ...{ kept: new KeptPacks(data), tasks, people, benchId, signer, note },
    keepCriteria: (text) => writeWhole(criteriaPath(data), text),
  });
  const workshop = new Workshop({ ...ends, clock, listen });
  const { sent } = packs;
  if (sent) workshop.sendPack(sent.pack.version, sent.sealed);
  return { workshop, link: new LeadLink(ends), packs, names };
}
