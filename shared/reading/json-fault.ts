/** Where a text stops being JSON, counted from 1, and why. */
export interface JsonFault {
  line: number;
  column: number;
  message: string;
  remedy: string;
}

const deepest = 100;
const numberPattern = /-?(0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?/y;
const spaces = /[ \t\r\n]*/y;
// eslint-disable-next-line no-control-regex -- JSON allows no control character in a text
const plainText = /[^"\\\u0000-\u001f]*/y;
const escapes = /\\(["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

class Fault extends Error {
  constructor(
    readonly offset: number,
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

/** Reads JSON only to find where it is wrong; JSON.parse says that in words that differ from engine to engine. */
class Reader {
  private offset = 0;
  constructor(private readonly text: string) {}

  all(): void {
    this.space();
    if (this.offset >= this.text.length) this.fail("there is nothing in it", "Write one JSON object.");
    this.value(0);
    this.space();
    if (this.offset < this.text.length)
      this.fail("there is text after the end of the JSON", "Remove what follows the last bracket.");
  }

  private fail(message: string, remedy: string, offset = this.offset): never {
    throw new Fault(offset, message, remedy);
  }

  private space(): void {
    this.match(spaces);
    if (this.text.charAt(this.offset) !== "/") return;
    if (this.text.startsWith("//", this.offset) || this.text.startsWith("/*", this.offset))
      this.fail("JSON has no comments", "Remove the comment.");
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.offset;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.offset += found.length;
    return found;
  }

  private value(depth: number): void {
    if (depth > deepest)
      this.fail(`it is nested more than ${deepest} levels deep`, "Check for a bracket that is never closed.");
    const character = this.text.charAt(this.offset);
    if (character === "{") return this.object(depth);
    if (character === "[") return this.array(depth);
    if (character === '"') return void this.string();
    for (const word of ["true", "false", "null"])
      if (this.text.startsWith(word, this.offset)) {
        this.offset += word.length;
        return this.endOfWord();
      }
    if (this.match(numberPattern) !== undefined) return this.endOfWord();
    if (character === "")
      this.fail("it ends too early", "Close every bracket and quote; the file may be cut off.");
    if (character === "'")
      this.fail("a text stands in single quotes", 'Write it in double quotes, "like this".');
    this.fail(
      `a value cannot begin with ${character}`,
      "Write a number, a text in double quotes, true, false, null, or a { or [ here.",
    );
  }

  private endOfWord(): void {
    if (/[\w.+-]/.test(this.text.charAt(this.offset)))
      this.fail(
        "this is neither a number nor true, false or null",
        "Write numbers as 2.5 or 32, without units, and text in double quotes.",
      );
  }

  private string(): string {
    const start = this.offset;
    this.offset += 1;
    for (;;) {
      this.match(plainText);
      const character = this.text.charAt(this.offset);
      if (character === '"') break;
      if (character === "" || character === "\n" || character === "\r")
        this.fail("a text is not closed", "Put a double quote at its end.", start);
      if (character < " ")
        this.fail("a control character stands in a text", "Remove it, or write \\t for a tab.");
      if (this.match(escapes) === undefined)
        this.fail("a \\ in a text is followed by nothing it can stand for", "Write \\\\ for a backslash.");
    }
    this.offset += 1;
    return this.text.slice(start, this.offset);
  }

  private object(depth: number): void {
    const names = new Set<string>();
    this.list("}", () => {
      if (this.text.charAt(this.offset) !== '"')
        this.fail("a field name in double quotes should stand here", 'Write it as "name": value.');
      const start = this.offset;
      const written = this.string();
      const name = written.includes("\\") ? (JSON.parse(written) as string) : written.slice(1, -1);
      if (names.has(name)) this.fail(`the field ${written} stands here twice`, "Keep one of the two.", start);
      names.add(name);
      this.space();
      if (this.text.charAt(this.offset) !== ":")
        this.fail("a : should follow the field name", 'Write it as "name": value.');
      this.offset += 1;
      this.space();
      this.value(depth + 1);
    });
  }

  private array(depth: number): void {
    this.list("]", () => this.value(depth + 1));
  }

  private list(close: "}" | "]", item: () => void): void {
    this.offset += 1;
    this.space();
    if (this.text.charAt(this.offset) === close) {
      this.offset += 1;
      return;
    }
    for (;;) {
      item();
      this.space();
      const character = this.text.charAt(this.offset);
      if (character === close) break;
      if (character === "") this.fail(`it ends before the ${close} that is due`, "The file may be cut off.");
      if (character !== ",")
        this.fail(`a comma or ${close} should stand here`, "Look for a missing comma or quote.");
      const comma = this.offset;
      this.offset += 1;
      this.space();
      if (this.text.charAt(this.offset) === close)
        this.fail(`a comma stands before the ${close}`, "Remove that comma.", comma);
    }
    this.offset += 1;
  }
}

/** The first place where a text is not JSON, a field written twice included; undefined where all of it is. */
export function jsonFault(text: string): JsonFault | undefined {
  try {
    new Reader(text).all();
    return undefined;
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    const before = text.slice(0, fault.offset).split(/\r\n|\r|\n/);
    return {
      line: before.length,
      column: (before.at(-1)?.length ?? 0) + 1,
      message: fault.message,
      remedy: fault.remedy,
    };
  }
}
