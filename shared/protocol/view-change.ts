/**
 * How one view differs from the one before it, of anything that can be written as JSON:
 *
 * - `to`: it is another value, given whole;
 * - `of`: an object of which these keys changed, and those of `gone` are no longer there;
 * - `items`: a list of things with an `id` each, of which these changed; `order` is there where others are in it now.
 */
export type ViewChange =
  | { to: unknown }
  | { of: Record<string, ViewChange>; gone?: string[] }
  | { items: Record<string, ViewChange>; order?: string[] };

type Thing = Record<string, unknown>;
type Item = Thing & { id: string };

const isThing = (value: unknown): value is Thing =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A list whose members can be told apart by their ids. */
const isItems = (value: unknown): value is Item[] =>
  Array.isArray(value) &&
  value.every((item) => isThing(item) && typeof item["id"] === "string") &&
  new Set(value.map((item: Item) => item.id)).size === value.length;

const byIds = (items: readonly Item[]): Thing => Object.fromEntries(items.map((item) => [item.id, item]));

/** What turns `before` into `after`; undefined where they are the same. Both hold only what JSON can write. */
export function changeOf(before: unknown, after: unknown): ViewChange | undefined {
  if (before === after) return undefined;
  if (isItems(before) && isItems(after) && before.length + after.length > 0) {
    const items = changesIn(byIds(before), byIds(after));
    const order = after.map(({ id }) => id);
    const isSame = order.length === before.length && order.every((id, at) => before[at]?.id === id);
    if (isSame) return Object.keys(items).length > 0 ? { items } : undefined;
    return { items, order };
  }
  if (isThing(before) && isThing(after)) {
    const of = changesIn(before, after);
    const gone = Object.keys(before).filter((key) => !isThere(after, key));
    if (gone.length > 0) return { of, gone };
    return Object.keys(of).length > 0 ? { of } : undefined;
  }
  return JSON.stringify(before) === JSON.stringify(after) ? undefined : { to: after };
}

/** A key with nothing in it is not written, as in JSON. */
const isThere = (thing: Thing, key: string): boolean => Object.hasOwn(thing, key) && thing[key] !== undefined;

const changesIn = (before: Thing, after: Thing): Record<string, ViewChange> =>
  Object.fromEntries(
    Object.keys(after)
      .filter((key) => isThere(after, key))
      .flatMap((key): [string, ViewChange][] => {
        const change = isThere(before, key) ? changeOf(before[key], after[key]) : { to: after[key] };
        return change ? [[key, change]] : [];
      }),
  );

/** The view after a change: what did not change is the very same object as before. */
export function changed(before: unknown, change: ViewChange): unknown {
  if ("to" in change) return change.to;
  if ("of" in change) {
    const after: Thing = { ...(before as Thing) };
    for (const key of change.gone ?? []) delete after[key];
    return Object.assign(after, applied(before as Thing, change.of));
  }
  const items = before as Item[];
  const byId = byIds(items);
  const now = { ...byId, ...applied(byId, change.items) };
  return (change.order ?? items.map(({ id }) => id)).map((id) => now[id]);
}

const applied = (before: Thing, changes: Record<string, ViewChange>): Thing =>
  Object.fromEntries(Object.entries(changes).map(([key, change]) => [key, changed(before[key], change)]));
