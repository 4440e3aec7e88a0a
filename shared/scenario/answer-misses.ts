import type { BoardDescription } from "../board/board.schema.ts";
import { type EntryId, entryId } from "../board/ids.ts";
import type { Finding, Verdict } from "../rules/verdict.ts";
import { walkedTheOtherWay, withCoresStated, withOtherNames } from "../wiring/same-wiring.ts";
import type { Wiring } from "../wiring/wiring.schema.ts";
import type { Built, Scenario } from "./scenario.schema.ts";
import { scenarioEntries } from "./scenario-entries.ts";
import { strip } from "./strip.ts";
import { toWiring } from "./to-wiring.ts";

export type Judge = (wiring: Wiring) => Verdict;

/** An answer of a scenario that does not get the verdict it must have. */
export interface Miss {
  /** Field of the answer in the scenario file. */
  field: string;
  /** In which form of the same wiring. */
  form: string;
  expected: string;
  actual: string;
}

/** The same answer written in other ways; a verdict that hangs on one of them is wrong. */
const forms: Record<string, (wiring: Wiring) => Wiring> = {
  "as written": (wiring) => wiring,
  "with stations renamed": withOtherNames,
  "walked the other way": walkedTheOtherWay,
  "with every core stated": withCoresStated,
  "renamed and walked the other way": (wiring) => walkedTheOtherWay(withOtherNames(wiring)),
};

const named = ({ rule, variant }: { rule: string; variant?: string | undefined }): string =>
  variant === undefined ? rule : `${rule}/${variant}`;

const inARow = (names: readonly string[]): string =>
  names.length > 0 ? names.toSorted().join(", ") : "none";

const weighty = ({ weight }: Finding): boolean => weight !== "note";

/** True where findings and expectations pair off one to one; an expectation without a variant takes any. */
function isExactly(
  findings: readonly Finding[],
  expected: readonly { rule: string; variant?: string | undefined }[],
) {
  const left = [...findings];
  // Those that state a variant choose first, so that one that takes any does not take theirs.
  for (const one of expected.toSorted(
    (a, b) => Number(b.variant !== undefined) - Number(a.variant !== undefined),
  )) {
    const index = left.findIndex(
      ({ rule, variant }) => rule === one.rule && (one.variant === undefined || variant === one.variant),
    );
    if (index === -1) return false;
    left.splice(index, 1);
  }
  return left.length === 0;
}

const unknownsOf = ({ undetermined }: Verdict): string[] =>
  undetermined.map(({ rule, place, field }) => `${rule} lacks ${field} of ${place.id}`);

const notMetBy = ({ requirements }: Verdict): number[] =>
  requirements.flatMap(({ answer }, index) => (answer === "met" ? [] : [index]));

function missesOf(verdict: Verdict, expected: Pick<Scenario["wrongAnswers"][number], "findings" | "notMet">) {
  const findings = verdict.findings.filter(weighty);
  const misses: { expected: string; actual: string }[] = [];
  if (!isExactly(findings, expected.findings))
    misses.push({
      expected: `findings ${inARow(expected.findings.map(named))}`,
      actual: inARow(findings.map(named)),
    });
  const [wanted, notMet] = [
    inARow((expected.notMet ?? []).map(String)),
    inARow(notMetBy(verdict).map(String)),
  ];
  if (wanted !== notMet) misses.push({ expected: `requirements not met: ${wanted}`, actual: notMet });
  if (verdict.undetermined.length > 0)
    misses.push({ expected: "nothing undetermined", actual: inARow(unknownsOf(verdict)) });
  return misses;
}

/** True where a board, or else what the scenario asks of one, has every entry that an answer uses. */
export function hasRoomFor(
  { cables }: Built,
  scenario: Scenario,
  board?: Pick<BoardDescription, "stations">,
): boolean {
  const entries = new Set<EntryId>(
    board
      ? board.stations.flatMap((station) => station.entries.map(({ letter }) => entryId(station.id, letter)))
      : scenario.stations.flatMap((station) =>
          scenarioEntries(station).map(({ letter }) => entryId(station.id, letter)),
        ),
  );
  return cables.every(({ from, to }) => entries.has(from) && entries.has(to));
}

/**
 * Judges every answer of a scenario, in every form of the same wiring and as the bench knows it, without its
 * hidden data. A model answer must be `met` with no danger, fix or query and nothing undetermined; a wrong answer must
 * give exactly its stated findings and miss exactly its stated requirements, on every board that has room for it.
 * Gives every miss; none is right.
 */
export function answerMisses(
  scenario: Scenario,
  judge: Judge,
  board?: Pick<BoardDescription, "stations">,
): Miss[] {
  const judged = (
    field: string,
    built: Built,
    missed: (verdict: Verdict) => Omit<Miss, "field" | "form">[],
  ): Miss[] => {
    const wirings = Object.entries(forms).map(([form, change]): [string, Wiring] => [
      form,
      change(toWiring({ scenario, board, built })),
    ]);
    const stripped = toWiring({ scenario: strip(scenario), board, built });
    return [...wirings, ["from the stripped scenario", stripped] as const].flatMap(([form, wiring]) =>
      missed(judge(wiring)).map((miss) => ({ field, form, ...miss })),
    );
  };
  return [
    ...scenario.modelAnswers.flatMap((built, index) =>
      judged(`modelAnswers[${index}]`, built, (verdict) => [
        ...missesOf(verdict, { findings: [] }),
        ...(verdict.proposal === "met" ? [] : [{ expected: "proposal met", actual: verdict.proposal }]),
      ]),
    ),
    ...scenario.wrongAnswers.flatMap(({ name, built, ...expected }, index) =>
      hasRoomFor(built, scenario, board)
        ? judged(`wrongAnswers[${index}] (${name})`, built, (verdict) => missesOf(verdict, expected))
        : [],
    ),
  ];
}
