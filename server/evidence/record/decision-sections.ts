import type { AnswerView, DecisionView } from "../../../shared/protocol/desk-view.ts";
import type { Adjustments } from "../../../shared/protocol/keep-view.ts";
import { ticks } from "../../../shared/protocol/decision-words.ts";
import type { Paper } from "./paper.ts";
import type { RecordWords } from "./record-words.ts";
import type { Section, ToldRecord } from "./section.ts";

function agreedWith(agreed: Adjustments | null, words: RecordWords): string {
  if (!agreed) return "";
  const { extraTimePercent, hasRests, isLarge, isReadAloud } = agreed;
  return [
    ...(extraTimePercent > 0 ? [words.t("agreed.more", { percent: extraTimePercent })] : []),
    ...(hasRests ? [words.t("agreed.rests")] : []),
    ...(isLarge ? [words.t("agreed.large")] : []),
    ...(isReadAloud ? [words.t("agreed.read")] : []),
  ].join(", ");
}

const observed: Section = (paper, { evidence: { told }, words }) => {
  paper.heading(words.t("observed"));
  const agreed = agreedWith(told.agreed, words);
  if (agreed) paper.paragraph(words.t("agreed", { what: agreed }));
  if (told.row.mode === "assessed")
    paper.paragraph(
      told.declaredWallMs === null
        ? words.t("own.not")
        : words.t("own", { time: words.time(told.declaredWallMs) }),
    );
  if (told.observations.length === 0) paper.paragraph(words.t("observed.none"));
  for (const { person, wallMs, seen, observerSays, learnerSays } of told.observations) {
    paper.paragraph(words.t("by", { person, time: words.time(wallMs) }), "bold");
    paper.paragraph(seen);
    if (observerSays) paper.paragraph(words.t("observer-says", { says: observerSays }));
    if (learnerSays) paper.paragraph(words.t("learner-says", { says: learnerSays }));
  }
};

function answers(
  paper: Paper,
  given: readonly AnswerView[],
  { evidence: { told }, words }: ToldRecord,
): void {
  const textOf = new Map(told.criteria.map(({ id, text }) => [id, text[words.language]]));
  paper.table({
    columns: [
      { title: words.t("criterion"), share: 3 },
      { title: words.t("proposed"), share: 1.1 },
      { title: words.t("decided"), share: 1.1 },
      { title: words.t("evidence"), share: 1.5 },
      { title: words.t("reason"), share: 2.2 },
    ],
    rows: given.map((one) => [
      textOf.get(one.criterion) ?? one.criterion,
      words.named("answer", one.proposed ?? "nothing"),
      words.named("answer", one.answer),
      ticks
        .filter((tick) => one[tick])
        .map((tick) => words.t(tick))
        .join(", "),
      one.reason ?? "",
    ]),
  });
}

function decision(paper: Paper, one: DecisionView, told: ToldRecord): void {
  const { words } = told;
  const { outcome, person, wallMs, says, nextKind, corrects, sealedWallMs, releasedWallMs, seenWallMs } = one;
  const facts = { outcome: words.named("answer", outcome), person, time: words.time(wallMs) };
  paper.paragraph(words.t("decision.is", facts), "bold");
  if (corrects) paper.paragraph(words.t("decision.corrects", { hash: corrects.hash, why: corrects.why }));
  answers(paper, one.criteria, told);
  if (says) paper.paragraph(words.t("says", { says }));
  if (nextKind) paper.paragraph(words.t("next", { kind: words.named("kind", nextKind) }));
  const sealed =
    sealedWallMs === null ? words.t("sealed.not") : words.t("sealed", { time: words.time(sealedWallMs) });
  const released =
    releasedWallMs === null
      ? words.t("released.not")
      : words.t("released", { time: words.time(releasedWallMs) });
  const seen = seenWallMs === null ? [] : [words.t("seen", { time: words.time(seenWallMs) })];
  paper.paragraph(`${[sealed, released, ...seen].join("; ")}.`);
}

const decided: Section = (paper, record) => {
  const { evidence, words } = record;
  const standing = evidence.told.decisions.toReversed();
  paper.heading(words.t("decision"));
  if (standing.length === 0) paper.paragraph(words.t("decision.none"));
  for (const [at, one] of standing.entries()) {
    if (at > 0) paper.heading(words.t("decision.earlier"));
    decision(paper, one, record);
  }
};

const reviewed: Section = (paper, record) => {
  const { evidence, words } = record;
  const { reviews, secondViews } = evidence.told;
  if (reviews.length > 0) paper.heading(words.t("review"));
  for (const { person, wallMs, answer, says } of reviews) {
    paper.paragraph(
      `${words.named("review", answer)}: ${words.t("by", { person, time: words.time(wallMs) })}`,
      "bold",
    );
    if (says) paper.paragraph(says);
  }
  for (const { person, wallMs, criteria } of secondViews) {
    paper.heading(words.t("second"));
    paper.paragraph(words.t("by", { person, time: words.time(wallMs) }), "bold");
    answers(paper, criteria, record);
  }
};

/** What people added to the work. */
export const decisionSections: readonly Section[] = [observed, decided, reviewed];
