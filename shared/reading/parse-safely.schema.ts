import type { z } from "zod";

/** A value by a schema, or what is wrong with it. */
export type Parsed<T> = { success: true; data: T } | { success: false; issues: readonly z.core.$ZodIssue[] };

/** Fields that a library may take for those of a text, a list or a number. */
const posingKeys = ["length", "size", "valueOf", "toString", "toJSON"];

const isObject = (value: unknown): value is object => typeof value === "object" && value !== null;

/** The path of the first object that poses as a text, a list or a number by fields of its own. */
function posingPath(root: unknown): PropertyKey[] {
  const waiting: { value: unknown; path: PropertyKey[] }[] = [{ value: root, path: [] }];
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const { value, path } = next;
    if (!isObject(value)) continue;
    if (!Array.isArray(value) && posingKeys.some((key) => Object.hasOwn(value, key))) return path;
    for (const [key, inner] of Object.entries(value))
      waiting.push({ value: inner, path: [...path, Array.isArray(value) ? Number(key) : key] });
  }
  return [];
}

/**
 * Parses what comes from outside. The schema library looks at the `length` of what it is given before it has looked
 * at its kind, and throws where that length is no number: such a value has not the form that is wanted, like any
 * other that has not.
 */
export function parseSafely<T>(schema: z.ZodType<T>, value: unknown): Parsed<T> {
  try {
    const parsed = schema.safeParse(value);
    return parsed.success ? parsed : { success: false, issues: parsed.error.issues };
  } catch {
    const message = "no object that poses as a text, a list or a number";
    return { success: false, issues: [{ code: "custom", path: posingPath(value), input: value, message }] };
  }
}
