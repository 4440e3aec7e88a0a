import { readFileSync } from "node:fs";
import { problemLine } from "../../shared/reading/problem.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";
import type { RuleId } from "../../shared/rules/rule.ts";
import type { Finding, Undetermined, Verdict } from "../../shared/rules/verdict.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";

/** A wiring with all findings it must give. */
export interface WiringCase {
  name: string;
  wiring: Wiring;
  /** Rule, variant, and a place that is among the causes or places of the finding. */
  expected: { rule: RuleId; variant: string; place: string }[];
  /** What must be undetermined; nothing may be undetermined about any other place. */
  undetermined?: { rule: RuleId; place: string; field: string }[];
}

/** How a verdict differs from what a case expects, one line each; none where it is right. */
export function mismatches(
  { expected, undetermined = [] }: Pick<WiringCase, "expected" | "undetermined">,
  verdict: Pick<Verdict, "findings" | "undetermined">,
): string[] {
  const open = [...expected];
  const unmarked = verdict.findings.filter((finding) => {
    const at = open.findIndex((one) => isSaid(one, finding));
    if (at >= 0) open.splice(at, 1);
    return at < 0;
  });
  const places = new Set(undetermined.map(({ place }) => place));
  const lacking = undetermined.filter((one) => !verdict.undetermined.some((said) => isSame(one, said)));
  return [
    ...open.map(({ rule, variant, place }) => `not found: ${rule}/${variant} at ${place}`),
    ...unmarked.map(({ id, weight }) => `not expected: ${weight} ${id}`),
    ...lacking.map(({ rule, place, field }) => `not undetermined: ${rule} for ${field} of ${place}`),
    ...verdict.undetermined
      .filter(({ place }) => !places.has(place.id))
      .map(({ rule, place, field }) => `not expected: ${rule} undetermined for ${field} of ${place.id}`),
  ];
}

const isSaid = (
  { rule, variant, place }: WiringCase["expected"][number],
  finding: Pick<Finding, "rule" | "variant" | "causes" | "places">,
): boolean =>
  rule === finding.rule &&
  variant === finding.variant &&
  [...finding.causes, ...finding.places].some(({ id }) => id === place);

const isSame = (
  { rule, place, field }: { rule: RuleId; place: string; field: string },
  said: Undetermined,
): boolean => rule === said.rule && field === said.field && place === said.place.id;

/** Reads case files; a wiring that cannot be used throws, for a case is part of the program. */
export function readCases(files: readonly string[]): WiringCase[] {
  return files.map((file) => {
    const { wiring, ...rest } = JSON.parse(readFileSync(file, "utf8")) as WiringCase;
    const read = readWiring(wiring, file);
    if (!read.ok) throw new BadCaseError(read.problems.map(problemLine));
    return { ...rest, wiring: read.value };
  });
}

/** A case whose wiring cannot be used, with a line a problem. */
export class BadCaseError extends Error {
  readonly code = "bad-case";
  readonly lines: string[];

  constructor(lines: string[]) {
    super(lines.join("\n"));
    this.lines = lines;
  }
}
