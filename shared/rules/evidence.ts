import type { Evidence, FactValue, Missing, Place } from "./rule.ts";

/** A place of one kind by its id. */
export const at = (kind: Place["kind"], id: string): Place => ({ kind, id });

/** Places of one kind, in the order given. */
export const allAt = (kind: Place["kind"], ids: Iterable<string>): Place[] =>
  [...ids].map((id) => ({ kind, id }));

/** What a rule saw. Without places it shows where its causes are; without causes nothing was seen. */
export const evidence = (
  variant: string,
  causes: readonly Place[],
  facts: Record<string, FactValue> = {},
  places: readonly Place[] = causes,
): Evidence[] => {
  const [first, ...rest] = causes;
  if (!first) return [];
  return [{ kind: "evidence", variant, causes: [first, ...rest], places: [...places], facts }];
};

/** A value that nobody has said, by its field in the wiring format. */
export const missing = (place: Place, field: string): Missing => ({
  kind: "missing",
  place,
  field,
  cause: "value",
});
