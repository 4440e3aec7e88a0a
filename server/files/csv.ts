/**
 * What a spreadsheet takes for the beginning of a formula, in letters of full width as well (OWASP, CSV Injection). A
 * tab or a line end before it is passed over by some.
 */
const formulaStart = /^[=+\-@\t\r\n＝＋－＠]/;
const harmless = "'";

export type CsvCell = string | number | null;

/**
 * One cell of a file for a spreadsheet (RFC 4180): a text that would be taken for a formula has an apostrophe before it,
 * which a spreadsheet does not show. This is the one place where cells are written.
 */
function csvCell(cell: CsvCell): string {
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  const text = cell ?? "";
  const safe = formulaStart.test(text) || text.startsWith(harmless) ? harmless + text : text;
  return /[",;\r\n\t]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** One line of it, its end included. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(csvCell).join(",")}\r\n`;

/** A line of a file that was read: where it begins, counted from 1, and its cells. */
export interface CsvRow {
  line: number;
  cells: string[];
}

/** Where a file is not what it should be. */
export interface LineFault {
  line: number;
  message: string;
}

export const faultLine = ({ line, message }: LineFault): string => `line ${line}: ${message}`;

const ending = /\r\n|\n|\r/y;
const quotedCell = /"((?:[^"]|"")*)"/y;
const plainCell = /[^",;\t\r\n]*/y;
const separators = [",", ";", "\t"] as const;

/** What stands between the cells: what the first line has most of. */
function separatorOf(text: string): string {
  const [first = ""] = text.split(/\r\n|\n|\r/, 1);
  const countOf = (separator: string): number => first.split(separator).length;
  return separators.reduce((best, one) => (countOf(one) > countOf(best) ? one : best));
}

/** The cells of a file for a spreadsheet, empty lines left out; or the first place where it is none. */
export function readCsv(text: string): { rows: CsvRow[] } | { fault: LineFault } {
  const separator = separatorOf(text);
  const rows: CsvRow[] = [];
  let offset = 0;
  let line = 1;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = offset;
    const found = pattern.exec(text);
    if (found) offset += found[0].length;
    return found;
  };
  const plain = new RegExp(plainCell.source.replace(",;\\t", separator), "y");
  while (offset < text.length) {
    const row: CsvRow = { line, cells: [] };
    for (;;) {
      const quoted = take(quotedCell);
      const cell = quoted ? (quoted[1] ?? "").replaceAll('""', '"') : (take(plain)?.[0] ?? "").trim();
      line += (quoted?.[0] ?? "").split(/\r\n|\n|\r/).length - 1;
      row.cells.push(cell.startsWith(harmless) && cell !== harmless ? cell.slice(1) : cell);
      if (text.charAt(offset) !== separator) break;
      offset += 1;
    }
    if (offset < text.length && !take(ending))
      return { fault: { line, message: "a quotation mark stands where none may stand, or is not closed" } };
    line += 1;
    if (row.cells.some((cell) => cell !== "")) rows.push(row);
  }
  return { rows };
}
