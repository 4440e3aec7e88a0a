import { z } from "zod";
import { sampleRisks } from "../../shared/protocol/decision-words.ts";
import { cableId } from "../../shared/board/ids.ts";
import { nameOfFault } from "../../shared/electrical/fault-name.ts";
import type { DeskLive, DeskRow } from "../../shared/protocol/desk-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import { fitsBoard } from "../../shared/scenario/fits-board.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { setFaults } from "../attempt/hunt-state.ts";
import type { BenchCore, Records } from "../bench/bench-core.ts";
import { benchNameOf } from "../bench/bench-name.ts";
import { cablesLeft } from "../bench/cables-left.ts";
import type { Staff } from "../people/person.ts";
import { titleOf } from "../exercise/exercises.ts";
import { eventOfBytes } from "../store/event-bytes.ts";
import { boardFace } from "../view/board-face.ts";
import { deskRow, nameOf, rowFor } from "./desk-rows.ts";
import { deskViewOf } from "./replay.ts";

const most = 50;

const sampleSchema = z.object({
  person: z.string(),
  seed: z.string(),
  risk: z.enum(sampleRisks),
  assessor: z.string().optional(),
  scenario: z.string().optional(),
  candidateCount: z.number(),
  attempts: z.array(z.string()),
});

function sampleOf(core: BenchCore, { log, logReader, attempts }: Records, me: Staff): DeskLive["sample"] {
  const row = logReader.lastOfType("sample-drawn", log.benchId);
  const parsed = row && parseSafely(sampleSchema, eventOfBytes(row.bytes).content);
  if (!row || !parsed?.success) return null;
  const { person, seed, risk, assessor, scenario, candidateCount, attempts: ids } = parsed.data;
  const rows = ids.flatMap((id): DeskRow[] => {
    const record = attempts.byId(id);
    return record ? [rowFor(core, me, record)] : [];
  });
  return {
    seed,
    risk,
    assessor: assessor === undefined ? null : nameOf(core.parts, assessor),
    scenario:
      scenario === undefined ? null : { id: scenario, title: titleOf(core.parts.scenarios, scenario) },
    wallMs: row.wallMs,
    person: nameOf(core.parts, person),
    candidateCount,
    attempts: rows,
  };
}

/** By what a verifier may narrow a sample; nobody else draws one. */
function samplesBy({ parts: { people, scenarios } }: BenchCore, me: Staff): DeskLive["samplesBy"] {
  if (me.role !== "verifier") return null;
  return {
    assessors: people.assessors().map(({ id, name }) => ({ id, name })),
    scenarios: [...scenarios.kits.values()].map(({ scenario: { id, title } }) => ({ id, title })),
  };
}

function workOf(core: BenchCore, { attempts }: Records, language: Language): DeskLive["work"] {
  const { run, state, isOpen } = core.work;
  const record = isOpen && state ? attempts.byId(state.id) : undefined;
  if (!state || !record) return null;
  const { board, judge } = core.parts;
  return {
    row: deskRow(core.parts, record),
    step: state.step,
    hidden: (state.hunt?.faults ?? []).map(nameOfFault),
    hiddenByTrainer: (state.hunt ? setFaults(state.hunt) : []).map(nameOfFault),
    isWaitingForTrainer: state.isTrainerNeeded || core.work.toResume?.mode === "assessed",
    view: run
      ? deskViewOf({ kit: run.kit, board, judge }, { ...run.state, plugged: run.plugged }, language)
      : null,
  };
}

function toFindAt(core: BenchCore): NonNullable<DeskLive["toFind"]> {
  const { hiddenNext = [] } = core.session.memory;
  return [...core.parts.scenarios.kits.values()]
    .filter((kit) => kit.scenario.asFound.cables.length > 0 && fitsBoard(kit.stripped, core.parts.board))
    .map(({ scenario: { id, title, asFound } }) => ({
      scenario: id,
      title,
      cables: asFound.cables.map(({ from, to }) => cableId(from, to)),
      hiddenNext: (hiddenNext.find(({ scenario }) => scenario === id)?.faults ?? []).map((fault) => ({
        fault,
        name: nameOfFault(fault),
      })),
    }));
}

/** What is going on at the bench, for one of the staff. @throws StoreError */
export function deskLive(
  core: BenchCore,
  me: Staff,
  isAtBench: boolean,
  language: Language,
): DeskLive | undefined {
  const { records, clock, board, isSimulated } = core.parts;
  if (!records) return undefined;
  const rowsOf = (filter: Parameters<typeof records.attempts.page>[0]): DeskRow[] =>
    records.attempts.page(filter, most).attempts.map((record) => deskRow(core.parts, record));
  return {
    me: { id: me.id, name: me.name, role: me.role },
    isAtBench,
    benchName: benchNameOf(records.log.benchId),
    nowWallMs: clock.wallMs(),
    work: workOf(core, records, language),
    toFind: me.role === "trainer" ? toFindAt(core) : null,
    face: boardFace(board, isSimulated),
    cableCount: cablesLeft(core.board),
    waiting: rowsOf({ status: "ready" }).sort((a, b) => (a.readyWallMs ?? 0) - (b.readyWallMs ?? 0)),
    toDecide: rowsOf({ status: "handed-in", mode: "assessed", isDecided: false }),
    samplesBy: samplesBy(core, me),
    sample: sampleOf(core, records, me),
  };
}
