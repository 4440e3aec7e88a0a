import type { FieldProblem } from "./problem.ts";

/** Complains where an id stands twice in a list. */
export function repeats(
  ids: readonly string[],
  fieldOf: (index: number) => string,
  what: string,
): FieldProblem[] {
  const first = new Map<string, number>();
  return ids.flatMap((id, index) => {
    const earlier = first.get(id);
    if (earlier === undefined) {
      first.set(id, index);
      return [];
    }
    return [
      {
        field: fieldOf(index),
        message: `${what} ${id} stands here a second time`,
        remedy: `Keep one; the first is at ${fieldOf(earlier)}.`,
      },
    ];
  });
}
