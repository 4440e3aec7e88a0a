import { describe, expect, it } from "vitest";
import { postgresPrograms } from "./private-postgres.ts";

/** Checks that need the engine; where it is not installed they say so, and in CI they fail. */
export function describeOnPostgres(what: string, checks: (programs: string) => void): void {
  const programs = postgresPrograms();
  if (programs) {
    describe(what, () => checks(programs));
    return;
  }
  const sentence = `${what} is not checked here: PostgreSQL's programs are not installed.`;
  if (process.env["CI"] === undefined) console.warn(sentence);
  it.skipIf(process.env["CI"] === undefined)(`${what} is checked on PostgreSQL`, () => {
    expect.fail(sentence);
  });
}
