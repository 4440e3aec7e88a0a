import type { z } from "zod";

type Schema = z.core.$ZodType;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const defOf = (schema: Schema) => (schema as z.core.$ZodTypes)._zod.def;

/** The schemas a value may be read by, wrappers taken off and the branch of a union picked by its tag. */
function plain(schema: Schema, value: unknown): Schema[] {
  const def = defOf(schema);
  switch (def.type) {
    case "optional":
    case "nullable":
    case "readonly":
    case "default":
      return plain(def.innerType, value);
    case "pipe":
      return plain(def.in, value);
    case "union": {
      const branches = def.options.flatMap((option) => plain(option, value));
      const tag = "discriminator" in def ? String(def.discriminator) : undefined;
      if (tag === undefined || !isRecord(value)) return branches;
      return branches.filter((branch) => {
        const shape = shapeOf(branch);
        const tagSchema = shape?.[tag];
        const tagDef = tagSchema && defOf(tagSchema);
        return tagDef?.type === "literal" && tagDef.values.some((literal) => literal === value[tag]);
      });
    }
    default:
      return [schema];
  }
}

const shapeOf = (schema: Schema): Readonly<Record<string, Schema>> | undefined => {
  const def = defOf(schema);
  return def.type === "object" ? def.shape : undefined;
};

function child(schema: Schema, key: PropertyKey): Schema | undefined {
  const def = defOf(schema);
  switch (def.type) {
    case "object":
      return def.shape[String(key)];
    case "array":
      return def.element;
    case "tuple":
      return def.items[Number(key)];
    case "record":
      return def.valueType;
    default:
      return undefined;
  }
}

/** The value at a path of what was read; undefined where the path leads nowhere. */
export const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => {
    if (Array.isArray(value)) return typeof key === "number" ? (value as unknown[])[key] : undefined;
    return isRecord(value) && Object.hasOwn(value, String(key)) ? value[String(key)] : undefined;
  }, root);

/** Names of the fields a schema knows at a path of a value, keys of a closed record included. */
export function fieldsOf(schema: Schema, root: unknown, path: readonly PropertyKey[]): string[] {
  let at = plain(schema, root);
  path.forEach((key, index) => {
    const value = valueAt(root, path.slice(0, index + 1));
    at = at.flatMap((parent) => {
      const next = child(parent, key);
      return next ? plain(next, value) : [];
    });
  });
  const names = at.flatMap((found) => {
    const def = defOf(found);
    if (def.type === "object") return Object.keys(def.shape);
    if (def.type !== "record") return [];
    const keys = defOf(def.keyType);
    return keys.type === "enum" ? Object.values(keys.entries).map(String) : [];
  });
  return [...new Set(names)];
}
