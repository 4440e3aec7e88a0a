import { relative } from "node:path";

/** What vitest's JSON report says of a file of checks. */
export interface VitestFile {
  name: string;
  assertionResults: { duration?: number | null }[];
}

/** What Playwright's JSON report says of a file of checks; suites may stand in suites. */
export interface PlaywrightSuite {
  file: string;
  specs: { tests: { results: { duration: number }[] }[] }[];
  suites?: PlaywrightSuite[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const playwrightMs = ({ specs, suites = [] }: PlaywrightSuite): number =>
  sum(specs.flatMap(({ tests }) => tests.flatMap(({ results }) => results.map(({ duration }) => duration)))) +
  sum(suites.map(playwrightMs));

/**
 * One line that names the files whose checks took longest, in seconds, and how long all took together.
 *
 * @param vitest files of vitest's JSON report, durations in ms
 * @param playwright suites of Playwright's JSON report, durations in ms; a file may stand there once a project
 */
export const slowestFiles = (
  vitest: readonly VitestFile[],
  playwright: readonly PlaywrightSuite[],
  count = 10,
): string => {
  const tookMs = new Map<string, number>();
  const add = (file: string, ms: number) => tookMs.set(file, (tookMs.get(file) ?? 0) + ms);
  for (const { name, assertionResults } of vitest)
    add(relative(process.cwd(), name), sum(assertionResults.map(({ duration }) => duration ?? 0)));
  for (const suite of playwright) add(`tests/e2e/${suite.file}`, playwrightMs(suite));
  const slowest = [...tookMs].sort(([, a], [, b]) => b - a).slice(0, count);
  const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`;
  return (
    `Checks took ${seconds(sum([...tookMs.values()]))} in ${tookMs.size} files, one after the other; slowest: ` +
    slowest.map(([file, ms]) => `${file} ${seconds(ms)}`).join(", ")
  );
};
