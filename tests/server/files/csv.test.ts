import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvLine, readCsv } from "../../../server/files/csv.ts";
import { testDepth } from "../../depth.ts";

const cellsOf = (text: string): string[][] => {
  const read = readCsv(text);
  if ("fault" in read) throw new Error(`line ${read.fault.line}: ${read.fault.message}`);
  return read.rows.map(({ cells }) => cells);
};

describe("a cell for a spreadsheet", () => {
  // What a spreadsheet takes for a formula: OWASP, CSV Injection.
  it.each([
    { cell: "=1+1", written: "'=1+1" },
    { cell: '=HYPERLINK("http://example.org";"x")', written: `"'=HYPERLINK(""http://example.org"";""x"")"` },
    { cell: "+44 20", written: "'+44 20" },
    { cell: "-2+3", written: "'-2+3" },
    { cell: "@SUM(A1)", written: "'@SUM(A1)" },
    { cell: "\t=1", written: '"\'\t=1"' },
    { cell: "\r=1", written: '"\'\r=1"' },
    { cell: "＝1", written: "'＝1" },
    { cell: "'tis", written: "''tis" },
    { cell: "Kasia Wrona", written: "Kasia Wrona" },
    { cell: "Wrona, Kasia", written: '"Wrona, Kasia"' },
    { cell: "two\nlines", written: '"two\nlines"' },
    { cell: 'the "first"', written: '"the ""first"""' },
    { cell: -1.5, written: "-1.5" },
    { cell: Number.NaN, written: "" },
    { cell: null, written: "" },
  ])("is harmless: $cell", ({ cell, written }) => {
    expect(csvLine([cell])).toBe(`${written}\r\n`);
  });

  it("is read as it was written, and never begins with what makes a formula", () => {
    const start = fc.constantFrom("=", "+", "-", "@", "\t", "\r", "'", '"', ",", ";", "", "＝");
    const cell = fc.tuple(start, fc.string()).map(([first, rest]) => first + rest);
    fc.assert(
      fc.property(fc.array(cell, { minLength: 2, maxLength: 5 }), (cells) => {
        fc.pre(cells.some((one) => one.trim() !== ""));
        const head = csvLine(cells.map((_, index) => `column ${index}`));
        const line = csvLine(cells);
        expect(cellsOf(head + line)[1]).toEqual(cells);
        for (const one of cells) expect(csvLine([one]).slice(0, -2)).not.toMatch(/^"?[=+\-@\t\r＝]/);
      }),
      { numRuns: 300 * testDepth },
    );
  });
});

describe("a file for a spreadsheet", () => {
  it.each([
    { what: "commas", text: "a,b\r\n1,2\r\n" },
    { what: "semicolons and no end", text: "a;b\n1;2" },
    { what: "tabs, and lines of an old machine", text: "a\tb\r1\t2\r" },
    { what: "empty lines and room around", text: "\n a , b \n\n1, 2\n,\n" },
  ])("is read with $what", ({ text }) => {
    expect(cellsOf(text)).toEqual([
      ["a", "b"],
      ["1", "2"],
    ]);
  });

  it("is refused where a quotation mark is not closed or stands where none may, with its line", () => {
    expect(readCsv('a,b\n"x\ny",2\n"open,3\n')).toEqual({
      fault: { line: 4, message: expect.any(String) as string },
    });
    expect(readCsv('a,b\nx"y,2\n')).toEqual({ fault: { line: 2, message: expect.any(String) as string } });
  });
});
