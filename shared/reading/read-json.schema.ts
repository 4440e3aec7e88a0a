import type { z } from "zod";
import { isMoreThan } from "./count-values.ts";
import { jsonFault } from "./json-fault.ts";
import { parseSafely } from "./parse-safely.schema.ts";
import type { FieldProblem, Read } from "./problem.ts";
import { schemaProblems } from "./schema-problems.schema.ts";

/** The mark some editors put before a text. */
const byteOrderMark = "\uFEFF";

/** Larger than any file of ours by far: a slip of the hand must not take the time or the memory of the bench. */
const largestLetterCount = 8_000_000;
const largestValueCount = 100_000;
/** So many problems are said; whoever mends these sees the next. */
const saidCount = 50;
const longestText = 400;

const cut = (text: string): string => (text.length > longestText ? `${text.slice(0, longestText)}…` : text);

const tooLarge = (message: string): FieldProblem[] => [
  { field: "the whole file", message, remedy: "Check that it is the file you meant." },
];

function said(problems: readonly FieldProblem[]): FieldProblem[] {
  const shown = problems
    .slice(0, saidCount)
    .map(({ field, message, remedy }) => ({ field: cut(field), message: cut(message), remedy: cut(remedy) }));
  if (problems.length <= saidCount) return shown;
  const message = `there is more that is wrong; the first ${saidCount} are named`;
  return [...shown, { field: "the whole file", message, remedy: "Mend these first." }];
}

/**
 * Reads what comes from outside, a JSON text or a value already parsed, by a schema and then by a check of what
 * the schema cannot say. Gives the value, or what is wrong with it by file, field and remedy, the first 50 problems
 * where there are more. Never throws, whatever it is given, and is soon done with a text that is far too large.
 */
export function readWith<T>(
  schema: z.ZodType<T>,
  input: unknown,
  fileName: string,
  problemsOf: (value: T) => FieldProblem[] = () => [],
): Read<T> {
  const unusable = (problems: FieldProblem[]): Read<T> => ({
    ok: false,
    problems: said(problems).map((problem) => ({ file: fileName, ...problem })),
  });
  let value = input;
  if (typeof input === "string") {
    if (input.length > largestLetterCount) return unusable(tooLarge("it is longer than 8 million letters"));
    const text = input.startsWith(byteOrderMark) ? input.slice(1) : input;
    const fault = jsonFault(text);
    if (fault)
      return unusable([
        {
          field: `line ${fault.line}, column ${fault.column}`,
          message: `this is not JSON: ${fault.message}`,
          remedy: fault.remedy,
        },
      ]);
    value = JSON.parse(text);
  }
  if (isMoreThan(largestValueCount, value)) return unusable(tooLarge("it holds more than 100,000 values"));
  const parsed = parseSafely(schema, value);
  // One more than is said, so that it shows that there are more.
  if (!parsed.success) return unusable(schemaProblems(schema, value, parsed.issues.slice(0, saidCount + 1)));
  const problems = problemsOf(parsed.data);
  return problems.length > 0 ? unusable(problems) : { ok: true, value: parsed.data };
}
