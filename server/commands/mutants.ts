import { join } from "node:path";
import { rules } from "../../shared/rules/index.ts";
import { judge } from "../../shared/rules/judge.ts";
import type { Place, Rule } from "../../shared/rules/rule.ts";
import { mismatches, readCases, type WiringCase } from "../cases/wiring-case.ts";
import { isAssumed, withoutEachField } from "../cases/without-each-field.ts";
import { jsonFilesIn } from "../files/read-file-with.ts";
import { folders } from "../folders.ts";

/** A rule made wrong on purpose. */
export interface Mutant {
  name: string;
  rule: Rule;
  pack: readonly Rule[];
}

const swapped = (pack: readonly Rule[], rule: Rule, check: Rule["check"]): Rule[] =>
  pack.map((one) => (one === rule ? { ...rule, check } : one));

/** Every rule that never fires, every variant that never does, and every variant that fires at each station in use. */
export function mutantsOf(pack: readonly Rule[]): Mutant[] {
  return pack.flatMap((rule) => [
    { name: `${rule.id} never fires`, rule, pack: swapped(pack, rule, () => []) },
    ...Object.keys(rule.variants).flatMap((variant): Mutant[] => [
      {
        name: `${rule.id} never says ${variant}`,
        rule,
        pack: swapped(pack, rule, (model) =>
          rule.check(model).filter((said) => said.kind === "missing" || said.variant !== variant),
        ),
      },
      {
        name: `${rule.id} always says ${variant}`,
        rule,
        pack: swapped(pack, rule, (model) =>
          [...model.used].map((id) => {
            const place: Place = { kind: "station", id };
            return { kind: "evidence", variant, causes: [place], places: [place], facts: {} };
          }),
        ),
      },
    ]),
  ]);
}

/** The mutants that no case notices. */
export function survivors(mutants: readonly Mutant[], cases: readonly WiringCase[]): string[] {
  const notices = ({ rule, pack }: Mutant): boolean => {
    const [about, others] = [true, false].map((isAbout) =>
      cases.filter(({ expected }) => expected.some((one) => one.rule === rule.id) === isAbout),
    );
    // Cases about the rule come first: most mutants are noticed by one of them.
    return [...(about ?? []), ...(others ?? [])].some(
      (one) => mismatches(one, judge(one.wiring, pack)).length > 0,
    );
  };
  return mutants.filter((mutant) => !notices(mutant)).map(({ name }) => name);
}

/** Findings that are gone without a word when one optional field is not said, by case and field. */
export function silentLosses({ name, wiring }: WiringCase, isTaken = isAssumed): string[] {
  const { findings } = judge(wiring);
  return withoutEachField(wiring).flatMap(({ path, field, wiring: less }) => {
    if (isTaken(field)) return [];
    const after = judge(less);
    // Where a finding shows may be said less exactly; what it says may not be lost.
    const said = new Set(
      [...after.findings, ...after.suppressed].map(({ rule, variant }) => `${rule}/${variant}`),
    );
    const asked = new Set(after.undetermined.map(({ rule }) => rule));
    return findings
      .filter(({ rule, variant }) => !said.has(`${rule}/${variant}`) && !asked.has(rule))
      .map(({ id }) => `${name}: without ${path} nothing is said of ${id}`);
  });
}

/**
 * `mutants`: shows that the checks can fail. Each rule is made wrong in turn, and some case has to notice; each
 * optional field of each case is left out in turn, and no finding may go without being asked for. Exit code 0 where
 * both hold, 1 with a line a miss, 2 where there are no cases.
 */
export async function run(args: string[]): Promise<number> {
  const [folder = join(folders.root, "tests/shared/rules/cases"), ...more] = args;
  if (more.length > 0) {
    console.error("mutants: name one folder of cases, or none.");
    return 2;
  }
  const cases = readCases(jsonFilesIn(folder));
  if (cases.length === 0) {
    console.error(`mutants: there are no cases in ${folder}.`);
    return 2;
  }
  const wrong = cases.flatMap((one) =>
    mismatches(one, judge(one.wiring)).map((line) => `not right to begin with: ${one.name}: ${line}`),
  );
  const mutants = mutantsOf(rules);
  const alive = survivors(mutants, cases).map((name) => `no case notices that ${name}`);
  const silent = cases.flatMap((one) => silentLosses(one));
  for (const line of [...wrong, ...alive, ...silent]) console.error(line);
  console.log(
    `${mutants.length} mutants, ${alive.length} not noticed; ${cases.length} cases, ${silent.length} findings lost without a word`,
  );
  return wrong.length + alive.length + silent.length === 0 ? 0 : 1;
}
