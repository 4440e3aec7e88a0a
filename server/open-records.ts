import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { attemptOnBench, kitOfAttempt } from "./bench/resume-attempt.ts";
import type { Records } from "./bench/bench-core.ts";
import { systemClock } from "./clock/system-clock.ts";
import { openPeople, type PeopleStore } from "./people/open-people.ts";
import { sentenceFor } from "./start-sentence.ts";
import { AttemptReader } from "./store/attempt-reader.ts";
import { KeptScenarios } from "./store/kept-scenarios.ts";
import { BenchMemoryReader, BenchMemoryWriter } from "./store/bench-memory.ts";
import { anchorFault, assertNotVanished, readAnchors } from "./store/log-anchor.ts";
import { LogReader } from "./store/log-reader.ts";
import { type LogSigner, openSigner } from "./store/log-signer.ts";
import { LogWriter } from "./store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "./store/open-database.ts";
import { StoreError, toStoreError } from "./store/store-error.ts";

/** The records of a bench, and what they were opened from. */
export interface OpenedRecords {
  records: Records;
  writing: Connection;
  reading: Connection;
  /** The bench's own log is damaged: these are beside it, for practice until a technician has seen to it. */
  isBesideDamaged: boolean;
  signer: LogSigner;
  /** Undefined beside a damaged log: who is on the list lies in that one. */
  people: PeopleStore | undefined;
}

/** So many logs beside a damaged one are tried, each damaged in its turn. */
const mostBeside = 9;

/** Reads all that a start of the bench reads, and tries out a write. @throws StoreError `damaged` and others. */
function prove(records: Records): void {
  records.memoryReader.read();
  records.logReader.eventCount();
  for (const { hash } of records.ownScenarios.all().values()) records.logReader.document(hash);
  const state = attemptOnBench(records);
  if (state) kitOfAttempt(records, state);
  try {
    records.log.tryOut();
    if (state) records.log.tryOut(state.id);
  } catch (error) {
    // A disk that takes nothing now is not damage: the bench starts and says so.
    if (!(error instanceof StoreError) || isDamage(error)) throw error;
  }
}

function openOne(path: string, isBesideDamaged: boolean, elsewhere: string | undefined): OpenedRecords {
  const open: Connection[] = [];
  try {
    const anchors = readAnchors(path, elsewhere);
    assertNotVanished(path, anchors);
    const writing = openForWriting(path);
    open.push(writing);
    const fault = anchors.map((anchor) => anchorFault(writing, anchor)).find((found) => found !== undefined);
    if (fault !== undefined) throw new StoreError("damaged", { path, reason: fault });
    const clock = systemClock();
    const signer = openSigner(dirname(path));
    const log = new LogWriter(writing, path, clock, signer, elsewhere);
    const reading = openForReading(path);
    open.push(reading);
    const records: Records = {
      log,
      logReader: new LogReader(reading),
      attempts: new AttemptReader(reading),
      memory: new BenchMemoryWriter(writing, path),
      memoryReader: new BenchMemoryReader(reading),
      ownScenarios: new KeptScenarios(writing, path),
    };
    const people = isBesideDamaged ? undefined : openPeople(dirname(path), writing, reading, log, clock);
    people?.reader.all();
    prove(records);
    log.checkpoint();
    return { records, writing, reading, people, signer, isBesideDamaged };
  } catch (error) {
    for (const database of open.toReversed()) database.close();
    throw toStoreError(error, path);
  }
}

/** A file that has lost a table, or holds the same place twice, can be opened and is damaged all the same. */
const damageReasons = /^SQLITE_(ERROR|CONSTRAINT)/;

const isDamage = (error: unknown): boolean =>
  error instanceof StoreError &&
  (error.code === "damaged" ||
    error.code === "secret-broken" ||
    (error.code === "failed" && damageReasons.test(String(error.facts["reason"]))));

/**
 * Opens the records. A damaged file stays where it is; the bench says so, and practice goes on in a log beside it,
 * the same one after each start until the damaged one has been restored. It is held to the anchors beside it and in a
 * folder `elsewhere`.
 *
 * @throws StoreError for anything but damage, a log of a later version among them.
 */
export function openRecords(
  path: string,
  note: (sentence: string) => void,
  elsewhere?: string,
): OpenedRecords {
  try {
    return openOne(path, false, elsewhere);
  } catch (error) {
    if (!isDamage(error)) throw error;
    const reason = error instanceof StoreError ? String(error.facts["reason"] ?? sentenceFor(error)) : "";
    const kept = existsSync(path) ? "it was left as it is" : "it is not there";
    for (let number = 1; number <= mostBeside; number += 1) {
      const beside = join(dirname(path), `practice-beside-damaged-${number}.db`);
      try {
        const opened = openOne(beside, true, undefined);
        note(
          `the log ${path} is damaged (${reason}); ${kept}. Practice is recorded in ${beside}. Call the technician.`,
        );
        return opened;
      } catch (again) {
        if (!isDamage(again)) throw again;
      }
    }
    throw error;
  }
}
