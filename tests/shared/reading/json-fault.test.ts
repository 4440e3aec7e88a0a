import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonFault } from "../../../shared/reading/json-fault.ts";
import { testDepth } from "../../depth.ts";

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe("where a text stops being JSON", () => {
  it.each([
    { text: "", line: 1, column: 1, says: "nothing in it" },
    { text: "  \n ", line: 2, column: 2, says: "nothing in it" },
    { text: '{\n  "a": 1,\n}', line: 2, column: 9, says: "comma stands before the }" },
    { text: "[1, 2,]", line: 1, column: 6, says: "comma stands before the ]" },
    { text: '{\n  "a": 1\n  "b": 2\n}', line: 3, column: 3, says: "a comma or } should stand here" },
    { text: '{ "a": 1, "a": 2 }', line: 1, column: 11, says: 'the field "a" stands here twice' },
    { text: '{ "\\u0061": 1, "a": 2 }', line: 1, column: 16, says: "stands here twice" },
    { text: "{ a: 1 }", line: 1, column: 3, says: "field name in double quotes" },
    { text: "{ 'a': 1 }", line: 1, column: 3, says: "field name in double quotes" },
    { text: "{ \"a\": 'b' }", line: 1, column: 8, says: "single quotes" },
    { text: '{ "a" 1 }', line: 1, column: 7, says: "a : should follow" },
    { text: '{ "a": "b\n" }', line: 1, column: 8, says: "text is not closed" },
    { text: '{ "a": "b', line: 1, column: 8, says: "text is not closed" },
    { text: '{ "a": "\\q" }', line: 1, column: 9, says: "followed by nothing it can stand for" },
    { text: '{ "a": 2.5mm }', line: 1, column: 11, says: "neither a number nor" },
    { text: '{ "a": 02 }', line: 1, column: 9, says: "neither a number nor" },
    { text: '{ "a": NaN }', line: 1, column: 8, says: "cannot begin with N" },
    { text: '{ "a": trueish }', line: 1, column: 8, says: "neither a number nor" },
    { text: '{ // why\n "a": 1 }', line: 1, column: 3, says: "no comments" },
    { text: '{ "a": 1 } x', line: 1, column: 12, says: "after the end" },
    { text: '{ "a": [1, 2', line: 1, column: 13, says: "ends before the ]" },
    { text: '{ "a":', line: 1, column: 7, says: "ends too early" },
    { text: '{\r\n"a": ?\r\n}', line: 2, column: 6, says: "cannot begin with ?" },
    { text: "[".repeat(5000), line: 1, column: 102, says: "100 levels deep" },
  ])("is at line $line, column $column: $says", ({ text, line, column, says }) => {
    const fault = jsonFault(text);
    expect(fault).toMatchObject({ line, column });
    expect(fault?.message).toContain(says);
    expect(fault?.remedy).toMatch(/\.$/);
  });

  it("is nowhere in any value written as JSON", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(undefined, 2, "\t"), (value, indent) => {
        expect(jsonFault(JSON.stringify(value, undefined, indent))).toBeUndefined();
      }),
      { numRuns: 200 * testDepth },
    );
  });

  // The engine's own JSON.parse (RFC 8259) is the outside judge; a field written twice is refused on top.
  it("is found exactly where the engine's parser refuses a damaged text", () => {
    fc.assert(
      fc.property(
        fc.jsonValue({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom("", ",", '"', "}", "]", "{", ":", "\\", "0", "-", "e", ".", "\n", "\u0001", "x"),
        fc.boolean(),
        (value, at, put, isReplaced) => {
          const text = JSON.stringify(value);
          const offset = at % (text.length + 1);
          const damaged = text.slice(0, offset) + put + text.slice(offset + (isReplaced ? 1 : 0));
          const fault = jsonFault(damaged);
          const isTwice = fault?.message.includes("twice") ?? false;
          expect(fault === undefined).toBe(isJson(damaged) && !isTwice);
        },
      ),
      { numRuns: 1000 * testDepth },
    );
  });
});
