import { byId, type EntryId, type StationId } from "../../shared/board/ids.ts";
import type { AttemptView, BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";

/** Where an end of a cable is put: at an entry, or at a station whose entry is still to be found. */
export type CableEnd = { entry: EntryId } | { station: StationId };

export type JoinStep =
  /** Both entries are known. */
  | { kind: "plug"; entryA: EntryId; entryB: EntryId }
  /** The person has to say which entry, because they differ in what they are for. */
  | { kind: "choose"; station: StationId; entries: EntryId[] }
  | { kind: "full"; station: StationId }
  | { kind: "same"; entry: EntryId };

type Taken = Pick<AttemptView, "cables" | "joints">;

/** Entries of a station with no lead in any contact. */
export const freeEntries = (station: FaceStation, { cables, joints }: Taken): FaceStation["entries"] => {
  const used = new Set<string>(joints.flat());
  for (const { conductors } of cables) for (const { from, to } of conductors) used.add(from).add(to);
  return station.entries.filter(({ contacts }) => !contacts.some(({ id }) => used.has(id)));
};

const entryAt = (
  end: CableEnd,
  face: BoardFace,
  taken: Taken,
  besides: EntryId | undefined,
): EntryId | Exclude<JoinStep, { kind: "plug" | "same" }> => {
  if ("entry" in end) return end.entry;
  const station = face.stations.find(({ id }) => id === end.station);
  const free = (station ? freeEntries(station, taken) : []).filter(({ id }) => id !== besides);
  const [first] = free;
  if (!first) return { kind: "full", station: end.station };
  // Entries of one side are alike inside; supply and load are not, and mixing them up is the learner's to see.
  const sides = new Set(station?.entries.map(({ side }) => side));
  if (sides.size > 1)
    return { kind: "choose", station: end.station, entries: free.map(({ id }) => id).sort(byId) };
  return first.id;
};

/**
 * What to do when a cable is laid from one end to the other: plug it, ask for an entry, or say why not. A station
 * whose entries are all of one side gets its first free entry.
 */
export const joinEnds = (from: CableEnd, to: CableEnd, face: BoardFace, taken: Taken): JoinStep => {
  const entryA = entryAt(from, face, taken, "entry" in to ? to.entry : undefined);
  if (typeof entryA !== "string") return entryA;
  const entryB = entryAt(to, face, taken, entryA);
  if (typeof entryB !== "string") return entryB;
  if (entryA === entryB) return { kind: "same", entry: entryA };
  return { kind: "plug", entryA, entryB };
};
