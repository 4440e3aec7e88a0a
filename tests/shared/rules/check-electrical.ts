import { buildModel } from "../../../shared/circuit/build-model.ts";
import type { Rule } from "../../../shared/rules/rule.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";

/** What a rule says of a wiring, one line each: `fix over way-1` or `missing csaMm2 socket-1.a~way-1.a`. */
export function said(rule: Rule, wiring: Wiring): string[] {
  return rule.check(buildModel(wiring)).map((result) => {
    if (result.kind === "missing") return `missing ${result.field} ${result.place.id}`;
    return `${rule.variants[result.variant]} ${result.variant} ${result.causes[0].id}`;
  });
}

/** The facts of the only evidence a rule gives. */
export function factsOf(rule: Rule, wiring: Wiring): Record<string, unknown> {
  const found = rule
    .check(buildModel(wiring))
    .flatMap((result) => (result.kind === "evidence" ? [result] : []));
  if (found.length !== 1) throw new Error(`${found.length} findings instead of one`);
  return found[0]!.facts;
}

/** The same wiring with the settings of one station taken away. */
export const withoutSettings = (wiring: Wiring, station: string): Wiring => ({
  ...wiring,
  stations: wiring.stations.map((each) => (each.id === station ? { ...each, settings: {} } : each)),
});
