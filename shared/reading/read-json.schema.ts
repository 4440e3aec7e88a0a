import type { z } from "zod";
import { jsonFault } from "./json-fault.ts";
import type { FieldProblem, Read } from "./problem.ts";
import { schemaProblems } from "./schema-problems.schema.ts";

/** The mark some editors put before a text. */
const byteOrderMark = "\uFEFF";

/**
 * Reads what comes from outside, a JSON text or a value already parsed, by a schema and then by a check of what
 * the schema cannot say. Gives the value, or everything that is wrong with it by file, field and remedy. Never
 * throws, whatever it is given.
 */
export function readWith<T>(
  schema: z.ZodType<T>,
  input: unknown,
  fileName: string,
  check: (value: T) => FieldProblem[] = () => [],
): Read<T> {
  const refuse = (problems: FieldProblem[]): Read<T> => ({
    ok: false,
    problems: problems.map((problem) => ({ file: fileName, ...problem })),
  });
  let value = input;
  if (typeof input === "string") {
    const text = input.startsWith(byteOrderMark) ? input.slice(1) : input;
    const fault = jsonFault(text);
    if (fault)
      return refuse([
        {
          field: `line ${fault.line}, column ${fault.column}`,
          message: `this is not JSON: ${fault.message}`,
          remedy: fault.remedy,
        },
      ]);
    value = JSON.parse(text);
  }
  const parsed = schema.safeParse(value);
  if (!parsed.success) return refuse(schemaProblems(schema, value, parsed.error.issues));
  const problems = check(parsed.data);
  return problems.length > 0 ? refuse(problems) : { ok: true, value: parsed.data };
}
