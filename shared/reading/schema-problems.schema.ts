import type { z } from "zod";
import { nearestName } from "./nearest-name.ts";
import { fieldName, type FieldProblem } from "./problem.ts";
import { fieldsOf, valueAt } from "./schema-at.schema.ts";

type Issue = z.core.$ZodIssue;

const kindWords: Record<string, string> = {
  object: "an object in { }",
  record: "an object in { }",
  array: "a list in [ ]",
  tuple: "a list in [ ]",
  string: "a text in double quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  null: "null",
};
const kindWord = (kind: string): string => kindWords[kind] ?? kind;

const quoted = (values: readonly unknown[]): string =>
  values.map((value) => JSON.stringify(value)).join(", ");

/** JSON can write numbers that no program can reckon with; they are read as these. */
const isBeyond = (value: unknown): boolean => value === Infinity || value === -Infinity;

function shown(value: unknown): string {
  if (isBeyond(value)) return "a number that is far too large";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function oneOf(field: string, value: unknown, allowed: readonly unknown[]): FieldProblem {
  const texts = allowed.filter((one) => typeof one === "string");
  const meant = typeof value === "string" ? nearestName(value, texts) : undefined;
  const [only] = allowed;
  const remedy =
    meant !== undefined
      ? `Did you mean ${quoted([meant])}? It may be ${quoted(allowed)}.`
      : allowed.length === 1
        ? `Write ${quoted([only])}.`
        : `Write one of ${quoted(allowed)}.`;
  if (value === undefined) return { field, message: "it is missing", remedy };
  return { field, message: `${shown(value)} is not known here`, remedy };
}

function sizeLimit(issue: Extract<Issue, { code: "too_small" | "too_big" }>): string {
  const isLeast = issue.code === "too_small";
  const limit = isLeast ? issue.minimum : issue.maximum;
  const unit = issue.origin === "array" ? " items" : issue.origin === "string" ? " letters" : "";
  if (issue.inclusive === false) return isLeast ? `more than ${limit}${unit}` : `less than ${limit}${unit}`;
  return `${isLeast ? "at least" : "at most"} ${limit}${unit}`;
}

function unknownKeys(schema: z.ZodType, root: unknown, path: PropertyKey[], keys: string[]): FieldProblem[] {
  const fields = fieldsOf(schema, root, path);
  return keys.map((key) => {
    const meant = nearestName(key, fields);
    return {
      field: fieldName([...path, key]),
      message: "there is no such field",
      remedy:
        meant !== undefined
          ? `Did you mean ${quoted([meant])}? Otherwise remove it.`
          : `Remove it. Known here: ${fields.join(", ")}.`,
    };
  });
}

function unionProblems(
  schema: z.ZodType,
  root: unknown,
  path: PropertyKey[],
  issue: Extract<Issue, { code: "invalid_union" }>,
): FieldProblem[] {
  const value = valueAt(root, path);
  if ("options" in issue && Array.isArray(issue.options))
    return [oneOf(fieldName(path), value, issue.options)];
  const branches = issue.errors;
  const literals = branches.flatMap((branch) =>
    branch.flatMap((one) => (one.code === "invalid_value" && one.path.length === 0 ? one.values : [])),
  );
  if (literals.length > 0) return [oneOf(fieldName(path), value, literals)];
  const closest = branches.toSorted((a, b) => deepest(b) - deepest(a) || a.length - b.length)[0] ?? [];
  return closest.flatMap((one) => issueProblems(schema, root, one, path));
}

/** Of the branches of a union the one whose first complaint lies deepest is most likely the one that was meant. */
const deepest = (issues: readonly Issue[]): number => Math.min(...issues.map(({ path }) => path.length));

function issueProblems(
  schema: z.ZodType,
  root: unknown,
  issue: Issue,
  before: readonly PropertyKey[] = [],
): FieldProblem[] {
  const path = [...before, ...issue.path];
  const field = fieldName(path);
  const value = valueAt(root, path);
  switch (issue.code) {
    case "unrecognized_keys":
      return unknownKeys(schema, root, path, issue.keys);
    case "invalid_value":
      return [oneOf(field, value, issue.values)];
    case "invalid_union":
      return unionProblems(schema, root, path, issue);
    case "invalid_type": {
      const wanted = kindWord(issue.expected);
      if (value === undefined) return [{ field, message: "it is missing", remedy: `Add it: ${wanted}.` }];
      if (isBeyond(value) && wanted.includes("number"))
        return [
          {
            field,
            message: "the number is far too large",
            remedy: "Check its digits and what follows the e.",
          },
        ];
      return [{ field, message: `${shown(value)} is not ${wanted}`, remedy: `Write ${wanted}.` }];
    }
    case "too_small":
    case "too_big": {
      const limit = sizeLimit(issue);
      const message =
        issue.origin === "array" || issue.origin === "string"
          ? `it has not the right length`
          : `${shown(value)} is out of range`;
      return [{ field, message, remedy: `Write ${limit}.` }];
    }
    case "invalid_format":
    case "custom":
      return [{ field, message: `${shown(value)} cannot be read`, remedy: `Write it so: ${issue.message}.` }];
    default:
      return [{ field, message: `${shown(value)} cannot be read`, remedy: `${issue.message}.` }];
  }
}

/** What a schema finds wrong with a value, field by field; empty where it finds nothing. */
export const schemaProblems = (schema: z.ZodType, root: unknown, issues: readonly Issue[]): FieldProblem[] =>
  issues.flatMap((issue) => issueProblems(schema, root, issue));
