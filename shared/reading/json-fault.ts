import { type ParseErrorCode, printParseErrorCode, visit } from "jsonc-parser";

/** Where a text stops being JSON, counted from 1, and why. */
export interface JsonFault {
  line: number;
  column: number;
  message: string;
  remedy: string;
}

type Bracket = "{" | "[";

const deepest = 100;
const isEscape = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** Where in a text in quotes the first \ stands that begins nothing. */
const strayEscape = (text: string, start: number): number => {
  for (let at = text.indexOf("\\", start); ; at = text.indexOf("\\", isEscape.lastIndex)) {
    isEscape.lastIndex = at;
    if (at < 0 || !isEscape.test(text)) return at;
  }
};

class Fault extends Error {
  constructor(
    readonly offset: number,
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

const cutOff = "Close every bracket and quote; the file may be cut off.";
const wordRemedy = "Write numbers as 2.5 or 32, without units, and text in double quotes.";

/** What stands at the end of a text: a value is missing there, or the bracket that is due. */
const endOf = (text: string, code: string): Fault => {
  const due = { CloseBraceExpected: "}", CloseBracketExpected: "]" }[code];
  if (text.trim() === "") return new Fault(text.length, "there is nothing in it", "Write one JSON object.");
  const message = due === undefined ? "it ends too early" : `it ends before the ${due} that is due`;
  return new Fault(text.length, message, cutOff);
};

/** A comma with nothing after it, where a closing bracket was met in its stead. */
const spareComma = (text: string, offset: number): Fault | undefined => {
  const before = text.slice(0, offset).trimEnd();
  const close = text.charAt(offset);
  return before.endsWith(",") && /[}\]]/.test(close)
    ? new Fault(before.length - 1, `a comma stands before the ${close}`, "Remove that comma.")
    : undefined;
};

const noName = (offset: number) =>
  new Fault(offset, "a field name in double quotes should stand here", 'Write it as "name": value.');

const noEnd = (offset: number) =>
  new Fault(offset, "there is text after the end of the JSON", "Remove what follows the last bracket.");

/** Something that is no JSON at all, by what should stand there: a field name, nothing more, or a value. */
const noSymbol = (text: string, offset: number, open: Bracket | undefined): Fault => {
  const before = text.slice(0, offset).trimEnd();
  if (open === "{" && /[{,]$/.test(before)) return noName(offset);
  if (open === undefined && before !== "") return noEnd(offset);
  return noValue(text, offset);
};

/** Something that cannot stand where a value should. */
const noValue = (text: string, offset: number): Fault => {
  const character = text.charAt(offset);
  if (character === "'")
    return new Fault(offset, "a text stands in single quotes", 'Write it in double quotes, "like this".');
  if (/[\w.+-]/.test(text.charAt(offset - 1)) || /^(true|false|null)/.test(text.slice(offset, offset + 5)))
    return new Fault(offset, "this is neither a number nor true, false or null", wordRemedy);
  return new Fault(
    offset,
    `a value cannot begin with ${character}`,
    "Write a number, a text in double quotes, true, false, null, or a { or [ here.",
  );
};

/** The parser's name of what is wrong, in words and with a remedy, at the place a person would mend. */
function faultOf(text: string, code: string, offset: number, open: Bracket | undefined): Fault {
  const at = (message: string, remedy: string) => new Fault(offset, message, remedy);
  if (offset >= text.length) return endOf(text, code);
  const comma = spareComma(text, offset);
  if (comma) return comma;
  switch (code) {
    case "InvalidCommentToken":
      return at("JSON has no comments", "Remove the comment.");
    case "PropertyNameExpected":
      return noName(offset);
    case "ColonExpected":
      return at("a : should follow the field name", 'Write it as "name": value.');
    case "UnexpectedEndOfString":
      return at("a text is not closed", "Put a double quote at its end.");
    case "InvalidEscapeCharacter":
    case "InvalidUnicode":
      return new Fault(
        strayEscape(text, offset),
        "a \\ in a text is followed by nothing it can stand for",
        "Write \\\\ for a backslash.",
      );
    case "InvalidCharacter":
      return at("a control character stands in a text", "Remove it, or write \\t for a tab.");
    case "UnexpectedEndOfNumber":
    case "InvalidNumberFormat":
      return at("this is neither a number nor true, false or null", wordRemedy);
    case "EndOfFileExpected":
      return noEnd(offset);
    case "CommaExpected":
      return /[\w.+-]/.test(text.charAt(offset - 1)) && /[\w.+-]/.test(text.charAt(offset))
        ? noValue(text, offset)
        : at(
            `a comma or ${open === "[" ? "]" : "}"} should stand here`,
            "Look for a missing comma or quote.",
          );
    case "InvalidSymbol":
      return noSymbol(text, offset, open);
    default:
      return noValue(text, offset);
  }
}

/** Walks the text and throws at its first fault. */
function walk(text: string): void {
  const open: Bracket[] = [];
  const names: Set<string>[] = [];
  const enter = (bracket: Bracket, offset: number) => {
    open.push(bracket);
    names.push(new Set());
    if (open.length <= deepest + 1) return;
    throw new Fault(
      offset,
      `it is nested more than ${deepest} levels deep`,
      "Check for a bracket that is never closed.",
    );
  };
  const leave = () => {
    open.pop();
    names.pop();
  };
  visit(
    text,
    {
      onObjectBegin: (offset) => enter("{", offset),
      onObjectEnd: leave,
      onArrayBegin: (offset) => enter("[", offset),
      onArrayEnd: leave,
      onObjectProperty: (name, offset, length) => {
        const known = names.at(-1);
        const written = text.slice(offset, offset + length);
        if (known?.has(name))
          throw new Fault(offset, `the field ${written} stands here twice`, "Keep one of the two.");
        known?.add(name);
      },
      onError: (code: ParseErrorCode, offset) => {
        throw faultOf(text, printParseErrorCode(code), offset, open.at(-1));
      },
    },
    { disallowComments: true },
  );
}

/** The first place where a text is not JSON, a field written twice included; undefined where all of it is. */
export function jsonFault(text: string): JsonFault | undefined {
  try {
    walk(text);
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
