import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { DeskRecord } from "../../shared/protocol/desk-view.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { wordChange } from "../../shared/scenario/word-change.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { pictureOf } from "../attempt/picture-of.ts";
import { stationNames } from "../attempt/station-names.ts";
import { stillRun } from "../attempt/still-run.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { replayed, toldOfAttempt } from "../desk/desk-record.ts";
import { deskViewOf, stateAt } from "../desk/replay.ts";
import type { Language } from "../../shared/text/languages.ts";

/** In which language evidence is to speak. */
export interface Asked {
  language: Language;
}

/** An attempt as evidence: as it was left, with its verdict, what people added, and its rows of the log with their seals. */
export interface AttemptEvidence {
  told: Omit<DeskRecord, "moments">;
  view: AttemptView;
  wiring: Wiring;
  /** What is least to do until all is right, a sentence each; empty where all is, or where that cannot be told. */
  leastChange: () => string[];
  readings: AttemptState["readings"];
  liveReadings: AttemptState["liveReadings"];
  rows: readonly LogRow[];
}

/** Gathers an attempt as evidence. What was handed in keeps the verdict that it was handed in with. @throws StoreError */
export function attemptEvidence(
  core: BenchCore,
  attemptId: string,
  { language }: Asked,
): AttemptEvidence | undefined {
  const found = replayed(core, attemptId);
  const state = found && stateAt(attemptId, found.rows, found.rows.length - 1);
  if (!found || !state) return undefined;
  const { parts, attempt } = found;
  const wiring = pictureOf(parts, state.plugged, state).wiring();
  return {
    told: toldOfAttempt(core, found, false),
    view: deskViewOf(parts, state, language),
    wiring,
    leastChange: () =>
      (stillRun(parts, state).leastChange() ?? []).map((change) =>
        wordChange(change, wiring, language, stationNames(parts.kit.stripped, language)),
      ),
    readings: state.readings,
    liveReadings: state.liveReadings,
    rows: attempt.records.logReader.rowsWithSeals(attemptId),
  };
}
