import fc from "fast-check";

const keys = [
  "length",
  "size",
  "valueOf",
  "toString",
  "toJSON",
  "constructor",
  "__proto__",
  "then",
  "map",
  "0",
  "issues",
];

/**
 * Objects and lists that pose as texts, numbers and lists by the fields they have, as JSON text, so that a field
 * named `__proto__` is one like any other.
 */
export const posingJson: fc.Arbitrary<string> = fc.letrec<{ value: string; object: string }>((tie) => ({
  object: fc
    .uniqueArray(fc.tuple(fc.constantFrom(...keys), tie("value")), {
      minLength: 1,
      maxLength: 4,
      selector: ([key]) => key,
    })
    .map((fields) => `{${fields.map(([key, value]) => `${JSON.stringify(key)}:${value}`).join(",")}}`),
  value: fc.oneof(
    { depthSize: "small" },
    fc.constantFrom("null", "1", "-1", "1e999", '""', '"a"', "[]", "{}", "true", "[[]]"),
    tie("object"),
    fc.array(tie("value"), { maxLength: 3 }).map((items) => `[${items.join(",")}]`),
  ),
})).object;

/** Every place in a JSON value, as a path. */
export function pathsIn(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== "object" || value === null) return [path];
  const inside = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [path, ...inside.flatMap(([key, inner]) => pathsIn(inner, [...path, key]))];
}

/** A JSON value with another value, given as text, at one place. */
export function withValueAt(value: unknown, path: readonly (string | number)[], json: string): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return JSON.parse(json);
  if (Array.isArray(value))
    return value.map((inner: unknown, index) => (index === key ? withValueAt(inner, rest, json) : inner));
  return Object.fromEntries(
    Object.entries(value as object).map(([name, inner]) => [
      name,
      name === key ? withValueAt(inner, rest, json) : (inner as unknown),
    ]),
  );
}
