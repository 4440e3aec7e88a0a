import { csvLine, type CsvCell } from "../files/csv.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import { eachAttempt } from "../store/each-attempt.ts";
import { type EvidenceSource, type Export, evidenceReaders } from "./export.ts";

/** A time as a spreadsheet reads it: ISO 8601 in UTC. */
const timeOf = (wallMs: number | null): string | null =>
  wallMs === null ? null : new Date(wallMs).toISOString();

type Column = [title: string, cell: (record: AttemptRecord, source: EvidenceSource) => CsvCell];

const columns: readonly Column[] = [
  ["attempt", ({ attemptId }) => attemptId],
  ["learner", ({ learner }, { learnerOf }) => learnerOf(learner)?.name ?? null],
  ["centre number", ({ learner }, { learnerOf }) => learnerOf(learner)?.centreNumber ?? null],
  ["scenario", ({ scenario }) => scenario],
  ["mode", ({ mode }) => mode],
  ["kind", ({ kind }) => kind],
  ["status", ({ status }) => status],
  ["started", ({ startedWallMs }) => timeOf(startedWallMs)],
  ["ready for check", ({ readyWallMs }) => timeOf(readyWallMs)],
  ["handed in", ({ handedInWallMs }) => timeOf(handedInWallMs)],
  ["tries", ({ tryCount }) => tryCount],
  ["hints", ({ hintCount }) => hintCount],
  ["danger", ({ dangerCount }) => dangerCount],
  ["fix", ({ fixCount }) => fixCount],
  ["query", ({ queryCount }) => queryCount],
  ["note", ({ noteCount }) => noteCount],
  ["proposed by the bench", ({ proposal }) => proposal],
  ["decision", ({ decision }) => decision],
  ["decided", ({ decidedWallMs }) => timeOf(decidedWallMs)],
  ["otherwise than proposed", ({ overrideCount }) => overrideCount],
  ["sealed", ({ sealedWallMs }) => timeOf(sealedWallMs)],
  ["released", ({ releasedWallMs }) => timeOf(releasedWallMs)],
  ["reviewed", ({ review }) => review],
];

/** The attempts of a list for a spreadsheet, the last started first. */
export const attemptsCsv: Export = {
  name: "attempts.csv",
  mediaType: "text/csv",
  who: evidenceReaders,
  of: "attempts",
  isNarrowed: true,
  lineCount: ({ attempts }, filter) => 1 + attempts.count(filter),
  *pieces(source, filter) {
    yield csvLine(columns.map(([title]) => title));
    for (const record of eachAttempt(source.attempts, filter))
      yield csvLine(columns.map(([, cell]) => cell(record, source)));
  },
};
