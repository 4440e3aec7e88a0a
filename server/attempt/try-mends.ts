import {
  type CableId,
  cableId,
  cableOfConductor,
  conductorId,
  byId,
  endsOfCable,
  type EntryId,
} from "../../shared/board/ids.ts";
import type { MendStep } from "../../shared/protocol/bench-view.ts";
import { followers } from "../../shared/rules/followers.ts";
import { rules } from "../../shared/rules/index.ts";
import type { Finding, Verdict } from "../../shared/rules/verdict.ts";
import { type FindingGroup, groupFindings } from "../../shared/rules/wording/group-findings.ts";
import type { Change as LeastChange } from "../../shared/scenario/change.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import { leadsOfCable } from "../board/leads-of-cables.ts";
import type { AttemptRun } from "./attempt-run.ts";
import { type Declared, settingName } from "./attempt-state.ts";
import { type Mend, mendCandidates, mendsOf } from "./mend-candidates.ts";

/** What can be done about a note, and how many more come out once it is mended. */
export interface Outlook {
  mend?: Mend;
  followCount: number;
}

/** So many changes are tried for a note, and no more: each is a verdict of its own. */
const mostTried = 10;
/** And before them so many of the things that are least to do. */
const mostOfLeast = 4;

interface Change {
  plugged: Plugged;
  declared: ReadonlyMap<string, Declared>;
}

/**
 * The first change of one touch that takes a note away and brings no other mistake, tried on the rules themselves, with
 * what the notes are after it: one that is of what is least to do until all is right before any other, so that notes,
 * last hint and record say the same. Without one, what the verdict keeps back because of the note.
 */
export function outlookOf(
  run: AttemptRun,
  group: FindingGroup,
  verdict: Verdict,
  least: () => readonly LeastChange[],
): Outlook {
  const before = new Set(verdict.findings.map(({ id }) => id));
  const candidates = mendCandidates(run, group, verdict);
  const changes = least();
  const isLeast = ({ steps }: Mend): boolean => steps.every((step) => isOf(changes, step));
  const inTurn = [
    // A cable that is led elsewhere is not only taken out.
    ...changes
      .filter(({ kind }) => kind !== "pull" || changes.length === 1)
      .flatMap((change) => mendsOf(run, change))
      .slice(0, mostOfLeast),
    ...[...candidates.filter(isLeast), ...candidates.filter((mend) => !isLeast(mend))].slice(0, mostTried),
  ];
  for (const mend of inTurn) {
    const after = run.judgedIf(changedBy(run, mend.steps)).verdict;
    if (isMended(group, verdict, after, mend))
      return { mend, followCount: groupFindings(after).filter((ones) => isNew(ones, before)).length };
  }
  const findings = followers(verdict, group, rules);
  return { followCount: groupFindings({ ...verdict, findings }).length };
}

/** Whether a step is one of some changes; a cable that is plugged again is taken out first. */
const isOf = (changes: readonly LeastChange[], step: MendStep): boolean =>
  changes.some((change) => {
    switch (step.act) {
      case "declare":
        return change.kind === "size"
          ? step.key === "csaMm2" && step.subject === change.cable && step.value === change.csaMm2
          : change.kind === "set" &&
              step.subject === change.station &&
              step.key === change.key &&
              step.value === change.value;
      case "pull":
        return change.kind === "pull"
          ? step.cable === change.cable
          : change.kind === "plug" && change.isAgain === true && step.cable === idOf(change.cable);
      case "plug-cable":
        return change.kind === "plug" && cableId(step.entryA, step.entryB) === idOf(change.cable);
    }
  });

const idOf = ({ from, to }: CableSpec): CableId => cableId(from, to);

const isNew = (group: FindingGroup, before: ReadonlySet<string>): boolean =>
  group.every(({ id }) => !before.has(id));

/** Gone for good, not only hidden, with nothing new to put right but a point that waits for its cable again. */
function isMended(group: FindingGroup, before: Verdict, after: Verdict, { steps }: Mend): boolean {
  const left = new Set([...after.findings, ...after.suppressed].map(({ id }) => id));
  if (group.some(({ id }) => left.has(id))) return false;
  const known = new Set([...before.findings, ...before.suppressed].map(({ id }) => id));
  const isPull = steps.every(({ act }) => act === "pull");
  return after.findings.every(
    ({ id, rule, weight }: Finding) =>
      known.has(id) ||
      weight === "note" ||
      weight === "query" ||
      (isPull && rules.find((one) => one.id === rule)?.isOutcome === true),
  );
}

function changedBy(run: AttemptRun, steps: readonly MendStep[]): Change {
  return steps.reduce<Change>(
    (change, step) => {
      switch (step.act) {
        case "declare": {
          const { subject, key, value } = step;
          return { ...change, declared: declare(change.declared, { subject, key, value, by: "learner" }) };
        }
        case "pull":
          return { ...change, plugged: withoutCable(change.plugged, step.cable) };
        case "plug-cable":
          return withCable(run, change, step);
      }
    },
    { plugged: run.plugged, declared: run.state.declared },
  );
}

const declare = (declared: Change["declared"], one: Declared): Change["declared"] =>
  new Map(declared).set(settingName(one.subject, one.key), one);

function withoutCable(plugged: Plugged, cable: CableId): Plugged {
  const ends: readonly EntryId[] = endsOfCable(cable);
  return {
    ...plugged,
    joins: plugged.joins.filter((join) => cableOfConductor(join) !== cable),
    codes: plugged.codes.filter(({ entry }) => !ends.includes(entry)),
  };
}

/** As the board is with a cable in, and its size as it is declared where no code says it. */
function withCable(
  run: AttemptRun,
  { plugged, declared }: Change,
  { entryA, entryB, csaMm2 }: Extract<MendStep, { act: "plug-cable" }>,
): Change {
  const leads = leadsOfCable(run.board, entryA, entryB).map((ends) => conductorId(...ends));
  const subject = cableId(entryA, entryB);
  return {
    plugged: { ...plugged, joins: [...new Set([...plugged.joins, ...leads])].sort(byId) },
    declared:
      csaMm2 === undefined
        ? declared
        : declare(declared, { subject, key: "csaMm2", value: csaMm2, by: "learner" }),
  };
}
