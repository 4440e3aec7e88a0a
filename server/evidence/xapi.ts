import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import { deskEventOfRow } from "../desk/desk-events.ts";
import { deskStateOf } from "../desk/desk-state.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import { eachAttempt } from "../store/each-attempt.ts";
import { hexOf } from "../store/row-hash.ts";
import { type EvidenceSource, type Export, evidenceReaders } from "./export.ts";

/** The versions of the standard that statements are written in (IEEE 9274.1.1 is the second). */
const versions = ["1.0.3", "2.0.0"] as const;
type Version = (typeof versions)[number];

/** Verbs of the standard's own first list, and the one it reserves for taking a statement back. */
const verbs = {
  completed: "http://adlnet.gov/expapi/verbs/completed",
  terminated: "http://adlnet.gov/expapi/verbs/terminated",
  passed: "http://adlnet.gov/expapi/verbs/passed",
  failed: "http://adlnet.gov/expapi/verbs/failed",
  scored: "http://adlnet.gov/expapi/verbs/scored",
  voided: "http://adlnet.gov/expapi/verbs/voided",
} as const;
type Verb = keyof typeof verbs;

/** Names of this program's own: nothing has to answer there. */
const home = "urn:spurwise";

/** A UUID (RFC 9562, version 8) out of a row's hash: the same row is the same statement, however often it goes out. */
function idOf(hash: string): string {
  const variant = ((Number.parseInt(hash.charAt(16), 16) & 3) | 8).toString(16);
  return [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `8${hash.slice(13, 16)}`,
    variant + hash.slice(17, 20),
    hash.slice(20, 32),
  ].join("-");
}

const timeOf = (wallMs: number): string => new Date(wallMs).toISOString();

/** The verb of a row that a statement is made of; undefined for any other row. */
function verbOf(row: LogRow): { verb: Verb; success?: boolean } | undefined {
  const decided = deskEventOfRow(row);
  if (decided?.type === "decided") {
    const { outcome } = decided.content;
    if (outcome === "met") return { verb: "passed", success: true };
    return outcome === "not-yet" ? { verb: "failed", success: false } : { verb: "scored" };
  }
  const event = eventOfRow(row);
  if (event?.type === "handed-in") return { verb: "completed" };
  return event?.type === "attempt-left" ? { verb: "terminated" } : undefined;
}

/** Without a name: whoever takes a statement in knows the learner by the bench's own opaque id. */
const actorOf = (name: string): object => ({
  objectType: "Agent",
  account: { homePage: `${home}:people`, name },
});

function statementOf(
  row: LogRow,
  { attemptId, learner, scenario }: AttemptRecord,
  version: Version,
): object | undefined {
  const found = verbOf(row);
  if (!found) return undefined;
  const { verb, success } = found;
  return {
    id: idOf(hexOf(row.hash)),
    version,
    actor: actorOf(learner ?? "guest"),
    verb: { id: verbs[verb], display: { "en-GB": verb } },
    object: { objectType: "Activity", id: `${home}:scenario:${scenario}` },
    result: {
      completion: verb !== "terminated",
      ...(success === undefined ? {} : { success }),
    },
    context: {
      registration: attemptId,
      extensions: { [`${home}:row`]: hexOf(row.hash) },
    },
    timestamp: timeOf(row.wallMs),
  };
}

/** Takes back the statement of a decision that a later one corrects. */
const voidingOf = (row: LogRow, correctedHash: string, by: string, version: Version): object => ({
  id: idOf(hexOf(row.hash).split("").reverse().join("")),
  version,
  actor: actorOf(by),
  verb: { id: verbs.voided, display: { "en-GB": "voided" } },
  object: { objectType: "StatementRef", id: idOf(correctedHash) },
  timestamp: timeOf(row.wallMs),
});

/** The statements of one attempt in their order: its end, each decision, and what takes one back. */
function* statementsOf(
  { logReader }: EvidenceSource,
  record: AttemptRecord,
  version: Version,
): Generator<object> {
  const rows = logReader.rowsOfAttempt(record.attemptId);
  const corrected = new Map(
    deskStateOf(rows).decisions.map(({ hash, corrects, person }) => [hash, { hash: corrects?.hash, person }]),
  );
  for (const row of rows) {
    const correction = corrected.get(hexOf(row.hash));
    if (correction?.hash !== undefined) yield voidingOf(row, correction.hash, correction.person, version);
    const statement = statementOf(row, record, version);
    if (statement) yield statement;
  }
}

/** Statements of the Experience API, one a line: each goes out as it will always go out, none is ever edited. */
export const xapiExports: readonly Export[] = versions.map((version) => ({
  name: `statements-${version}.jsonl`,
  mediaType: "application/jsonl",
  who: evidenceReaders,
  of: "attempts",
  isNarrowed: true,
  *pieces(source, filter) {
    for (const record of eachAttempt(source.attempts, filter))
      for (const statement of statementsOf(source, record, version)) yield `${JSON.stringify(statement)}\n`;
  },
}));
