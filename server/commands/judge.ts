import { isToMend } from "../../shared/rules/rule.ts";
import { readFileSync } from "node:fs";
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
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { type AppealsPack, appealsPackSchema } from "../evidence/appeals-pack.schema.ts";
import { judgeAgain } from "../evidence/judge-again.ts";
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

/** The appeals pack that a file is; undefined for any other file. */
function packIn(file: string): AppealsPack | undefined {
  try {
    const told: unknown = JSON.parse(readFileSync(file, "utf8"));
    const parsed = parseSafely(appealsPackSchema, told);
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

const idsOf = (verdict: Verdict): string[] => verdict.findings.map(({ id }) => id);
const without = (ids: readonly string[], others: readonly string[]): string =>
  ids.filter((id) => !others.includes(id)).join(", ") || "none";

/** Says what comes of judging a pack again. Exit code 0 where the verdict is that of then, 1 where something is not, 2 where it cannot be judged. */
function sayAgain(pack: AppealsPack): number {
  const done = judgeAgain(pack, judge);
  if ("changed" in done) {
    console.error(`The pack was changed. First: ${done.changed}.`);
    return 1;
  }
  if ("cannot" in done) {
    console.error(`This attempt cannot be judged again: ${done.cannot}.`);
    return 2;
  }
  const { stored, again, isSame, rulePackVersion, wiring, sealCount } = done;
  console.log(`Attempt ${pack.attemptId}: ${pack.rows.length} records, ${sealCount} seals, none changed.`);
  console.log(verdictLines(again, wiring).join("\n"));
  if (isSame) console.log(`Judged again: the verdict is that of then, byte for byte (${rulePackVersion}).`);
  else {
    console.log(
      `Judged then by ${rulePackVersion}, now by ${again.packVersion}; what was found then stands.`,
    );
    console.log(`No longer found: ${without(idsOf(stored), idsOf(again))}.`);
    console.log(`Found now and not then: ${without(idsOf(again), idsOf(stored))}.`);
  }
  return isSame ? 0 : 1;
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
  // What is piped in can be read only once.
  const pack = path === "-" ? undefined : packIn(file);
  if (pack) return sayAgain(pack);
  const read = readFileWith(file, readWiring);
  if (!read.ok) {
    for (const problem of read.problems) console.error(problemLine(problem));
    return 2;
  }
  const verdict = judge(read.value);
  if (args.includes("--json")) console.log(JSON.stringify(verdict, undefined, 2));
  else console.log(verdictLines(verdict, read.value).join("\n"));
  return verdict.findings.some(({ weight }) => isToMend(weight)) ? 1 : 0;
}
