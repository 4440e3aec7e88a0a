import { resolve } from "node:path";
import { judge } from "../../shared/rules/judge.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { groupFindings } from "../../shared/rules/wording/group-findings.ts";
import { wordFinding } from "../../shared/rules/wording/word-finding.ts";
import { wordRequirement } from "../../shared/rules/wording/word-requirement.ts";
import { wordUndetermined } from "../../shared/rules/wording/word-undetermined.ts";
import { problemLine } from "../../shared/reading/problem.ts";
import { readWiring } from "../../shared/wiring/read-wiring.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { readFileWith } from "../files/read-file-with.ts";

const answers = { met: "met", "not-yet": "not yet", "cannot-say": "cannot say" } as const;

const caution =
  "A training aid, no design advice. It covers connection, sizes and tests, not workmanship. Real circuits can kill: " +
  "real work is for competent people, licensed or registered where the law asks, under the local code.";

/** A verdict as lines of text: findings, what cannot be said, what was asked for, and the proposal. */
export function verdictLines(verdict: Verdict, wiring: Wiring): string[] {
  const findings = groupFindings(verdict).flatMap((group) => {
    const words = wordFinding(group, wiring, "en", undefined, Infinity);
    const [{ rule, variant }] = group;
    return [
      `${words.weightWord.toUpperCase()}  ${words.title}  [${rule}/${variant}]`,
      ...[words.where, words.what, words.why, words.remedy, words.reference].map((line) => `  ${line}`),
      "",
    ];
  });
  return [
    ...(findings.length > 0 ? findings : ["No findings.", ""]),
    ...verdict.undetermined.map((one) => wordUndetermined(one, wiring, "en")),
    ...(verdict.undetermined.length > 0 ? [""] : []),
    ...verdict.requirements.map(
      ({ requirement, answer }) => `${answers[answer]}: ${wordRequirement(requirement, wiring, "en")}`,
    ),
    `Proposal: ${answers[verdict.proposal]} (rule pack ${verdict.packVersion}).`,
    caution,
  ];
}

/**
 * `judge file.json [--json]`: judges a wiring file without a bench and prints the verdict; `-` is what is piped in. Exit code 0 where nothing
 * weighs danger or fix, 1 where something does, 2 where the file cannot be used, with the place named.
 */
export async function run(args: string[]): Promise<number> {
  const [path, ...more] = args.filter((arg) => arg !== "--json");
  if (path === undefined || more.length > 0 || (path.startsWith("-") && path !== "-")) {
    console.error("judge: name one wiring file, and --json for the verdict as JSON.");
    return 2;
  }
  // npm runs a command in the project's folder; whoever called it named the file from where they stood.
  const file = path === "-" ? "/dev/stdin" : resolve(process.env["INIT_CWD"] ?? "", path);
  const read = readFileWith(file, readWiring);
  if (!read.ok) {
    for (const problem of read.problems) console.error(problemLine(problem));
    return 2;
  }
  const verdict = judge(read.value);
  if (args.includes("--json")) console.log(JSON.stringify(verdict, undefined, 2));
  else console.log(verdictLines(verdict, read.value).join("\n"));
  return verdict.findings.some(({ weight }) => weight === "danger" || weight === "fix") ? 1 : 0;
}
