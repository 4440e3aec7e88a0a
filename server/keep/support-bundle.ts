import type { LogRow } from "../../shared/protocol/log-row.ts";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { KeptNote } from "../machine/kept-notes.ts";
import { readThroughOr } from "../store/read-through-or.ts";
import { type MachineParts, machineView } from "./machine-view.ts";

const lastRowCount = 200;

/** Of a row of the log only that it is there: who did it, on which attempt and what was said are left out. */
const traceOf = ({ boot, sequence, type, monotonicMs, wallMs, clockState }: LogRow) => ({
  boot,
  sequence,
  type,
  monotonicMs,
  wallMs,
  clockState,
});

/**
 * What the program said, without what could tell of a person: names and centre numbers of everybody on the list, whatever
 * stands between quotation marks, and folders, which may be named after somebody.
 */
export function withoutPeople(sentence: string, people: readonly string[]): string {
  const known = people
    .filter((word) => word !== "")
    .toSorted((a, b) => b.length - a.length)
    .reduce((text, word) => text.replaceAll(wordAlone(word), "…"), sentence);
  return known.replace(/"[^"\n]*"/g, '"…"').replace(/(?:\/[^\s/:,;)"]+)+(?=\/[^\s/])/g, "…");
}

/** A word where it stands alone: the number 7 is not taken out of 17. */
const wordAlone = (word: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])${word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}(?![\\p{L}\\p{N}])`, "giu");

const noteWithout = ({ wallMs, sentence }: KeptNote, people: readonly string[]): KeptNote => ({
  wallMs,
  sentence: withoutPeople(sentence, people),
});

/**
 * What somebody who helps from afar needs to know of a bench, with nothing of a person in it: how machine, records and
 * board are, what is set, which events the log ends with, and what the program said last.
 *
 * @throws a file system error where the disk cannot be asked.
 */
export function supportBundle(core: BenchCore, health: Health, parts: MachineParts): object {
  const { board, people, records, scenarios, isSimulated, isNetworkOpen, findings } = core.parts;
  const names = readThroughOr([], () =>
    people.list.learners().flatMap(({ name, centreNumber }) => [name, ...name.split(/\s+/), centreNumber]),
  );
  const staff = readThroughOr([], () => people.all().flatMap(({ name }) => [name, ...name.split(/\s+/)]));
  return {
    format: 1,
    what: "How a Spurwise bench is. There is no name, number, badge or comment in it.",
    machine: machineView(core, health, parts),
    set: {
      board: board.id,
      stations: board.stations.length,
      isSimulated,
      isNetworkOpen,
      findings,
      scenarios: scenarios.kits.size,
      language: core.session.memory.language,
      isBackUpChosen: parts.backUpTo !== undefined,
    },
    people: readThroughOr(null, () => ({
      known: people.all().length,
      isDemonstration: people.isDemonstration,
    })),
    boardFaults: board.stations.length === 0 ? [] : (core.board.sensed?.faults ?? []),
    work: {
      isOpen: core.work.isOpen,
      mode: core.work.state?.mode ?? null,
      step: core.work.state?.step ?? null,
    },
    lastEvents: readThroughOr([], () =>
      (records?.logReader.lastRows(records.log.benchId, lastRowCount) ?? []).map(traceOf),
    ),
    said: parts.notes().map((note) => noteWithout(note, [...names, ...staff])),
  };
}
