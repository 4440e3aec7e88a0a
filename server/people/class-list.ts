import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { csvLine, type LineFault, readCsv } from "../files/csv.ts";
import { badgeSchema, toldSchema } from "./person.ts";
import type { KnownPerson } from "./person-reader.ts";

/** A learner as a class list has them. */
export interface ListedLearner {
  line: number;
  name: string;
  centreNumber: string;
  badge: string | undefined;
}

/** What is in the list, or what is wrong with it line by line. */
export type ClassList = { ok: true; learners: ListedLearner[] } | { ok: false; faults: LineFault[] };

/** A class list of some hundred names has a few kilobytes. */
export const largestListBytes = 256 * 1024;
const mostLearners = 500;
const mostFaults = 20;

const headings = {
  name: ["name", "imię i nazwisko"],
  number: ["centre number", "numer"],
  badge: ["badge", "karta", "identyfikator"],
};

const columnOf = (cells: readonly string[], names: readonly string[]): number =>
  cells.findIndex((cell) => names.includes(cell.trim().toLowerCase()));

/** A list with so many faults is mended from its beginning. */
function faulty(faults: readonly LineFault[]): ClassList {
  const more =
    faults.length > mostFaults ? [{ line: faults[mostFaults]?.line ?? 0, message: "there is more" }] : [];
  return { ok: false, faults: [...faults.slice(0, mostFaults), ...more] };
}

/**
 * Reads a class list: a file for a spreadsheet, its first line naming the columns `name`, `centre number`, `badge` in any
 * order, the last two as wanted. All of it is right or none of it is taken.
 */
export function readClassList(bytes: Uint8Array): ClassList {
  if (bytes.length > largestListBytes)
    return faulty([{ line: 1, message: "the file is larger than 256 kB" }]);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return faulty([{ line: 1, message: "the file is not UTF-8 text; save it as CSV UTF-8" }]);
  }
  const read = readCsv(text);
  if ("fault" in read) return faulty([read.fault]);
  const [head, ...rows] = read.rows;
  const at = {
    name: columnOf(head?.cells ?? [], headings.name),
    number: columnOf(head?.cells ?? [], headings.number),
    badge: columnOf(head?.cells ?? [], headings.badge),
  };
  if (!head || at.name < 0) return faulty([{ line: 1, message: 'the first line has no column "name"' }]);
  if (rows.length > mostLearners)
    return faulty([
      { line: rows[mostLearners]?.line ?? 0, message: `there are more than ${mostLearners} names` },
    ]);
  const faults: LineFault[] = [];
  const badges = new Map<string, number>();
  const learners = rows.flatMap(({ line, cells }): ListedLearner[] => {
    const say = (message: string): void => void faults.push({ line, message });
    if (cells.length > head.cells.length)
      say(`there are ${cells.length} cells, and ${head.cells.length} columns`);
    const told = parseSafely(toldSchema, {
      name: cells[at.name] ?? "",
      centreNumber: cells[at.number] ?? "",
    });
    if (!told.success) {
      const isName = told.issues[0]?.path[0] === "name";
      say(
        isName
          ? "the name is missing or longer than 60 letters"
          : "the centre number is longer than 30 letters",
      );
      return [];
    }
    const badge = cells[at.badge] ?? "";
    if (badge === "") return [{ line, ...told.data, badge: undefined }];
    if (!parseSafely(badgeSchema, badge).success) say("the badge is longer than 64 letters");
    const earlier = badges.get(badge);
    if (earlier !== undefined) say(`the badge stands in line ${earlier} already`);
    badges.set(badge, line);
    return [{ line, ...told.data, badge }];
  });
  return faults.length > 0 ? faulty(faults.sort((a, b) => a.line - b.line)) : { ok: true, learners };
}

/** The learners of a bench as such a list; badges are known to nobody, so none is in it. */
export const classListOf = (people: readonly KnownPerson[]): string =>
  [
    csvLine(["name", "centre number"]),
    ...people
      .filter(({ role }) => role === "learner")
      .map(({ name, centreNumber }) => csvLine([name, centreNumber])),
  ].join("");
