/** Changes one thing in a copy of a file that was good, to see what a reader says of it. */
export type Change = (file: unknown) => void;

const keysOf = (path: string): (string | number)[] =>
  path
    .split(/[.[\]]/)
    .filter((key) => key !== "")
    .map((key) => (/^\d+$/.test(key) ? Number(key) : key));

/** The object or list that holds what the path leads to, and its key there. */
function holderOf(file: unknown, path: string): [Record<string | number, unknown>, string | number] {
  const keys = keysOf(path);
  const last = keys.pop();
  if (last === undefined) throw new Error("a path has at least one key");
  const holder = keys.reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], file);
  if (typeof holder !== "object" || holder === null) throw new Error(`the file has nothing at ${path}`);
  return [holder as Record<string | number, unknown>, last];
}

const listAt = (file: unknown, path: string): unknown[] => {
  const [holder, key] = holderOf(file, path);
  const list = holder[key];
  if (!Array.isArray(list)) throw new Error(`the file has no list at ${path}`);
  return list as unknown[];
};

/** Puts a value at a path such as `cables[0].from`. */
export const put =
  (path: string, value: unknown): Change =>
  (file) => {
    const [holder, key] = holderOf(file, path);
    holder[key] = value;
  };

/** Takes out the field at a path. */
export const drop =
  (path: string): Change =>
  (file) => {
    const [holder, key] = holderOf(file, path);
    Reflect.deleteProperty(holder, key);
  };

/** Puts a value at the end of the list at a path. */
export const add =
  (path: string, value: unknown): Change =>
  (file) => {
    listAt(file, path).push(value);
  };

/** Takes the last of the list at a path. */
export const dropLast =
  (path: string): Change =>
  (file) => {
    listAt(file, path).pop();
  };

/** Several changes at once. */
export const all =
  (...changes: Change[]): Change =>
  (file) => {
    for (const change of changes) change(file);
  };

/** A changed copy of a file. */
export const changed = (file: unknown, change: Change): unknown => {
  const copy: unknown = structuredClone(file);
  change(copy);
  return copy;
};
