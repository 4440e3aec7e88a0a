import { hexOf } from "../../store/row-hash.ts";
import { shortKey } from "../../store/log-signer.ts";
import { eventOfBytes } from "../../store/event-bytes.ts";
import { decisionSections } from "./decision-sections.ts";
import { drawFigure } from "./draw-figure.ts";
import { readingRows } from "./reading-rows.ts";
import type { RecordWords } from "./record-words.ts";
import type { Section } from "./section.ts";
import { cableRows, stationRows } from "./wiring-rows.ts";
import { wiringDrawing } from "./wiring-drawing.ts";

const head: Section = (paper, { evidence: { told, view }, record, source, words }) => {
  const learner = source.learnerOf(record.learner);
  paper.title(words.t("title"));
  paper.paragraph(words.t("caution"), "bold");
  paper.table({
    columns: [
      { title: words.t("what"), share: 1 },
      { title: words.t("told"), share: 3 },
    ],
    rows: [
      [words.t("learner"), learner?.name ?? (record.learner === null ? words.t("guest") : told.row.learner)],
      ...(learner?.centreNumber ? [[words.t("centre"), learner.centreNumber]] : []),
      [words.t("task"), view.scenario.title[words.language]],
      [words.t("place"), view.scenario.place[words.language]],
      [words.t("mode"), `${words.named("mode", record.mode)}, ${words.named("kind", record.kind)}`],
      [words.t("status"), words.named("status", record.status)],
      [words.t("started"), words.time(record.startedWallMs)],
      [words.t("handed-in"), words.time(record.handedInWallMs)],
      [words.t("tries"), String(record.tryCount)],
      [words.t("hints"), String(record.hintCount)],
      [words.t("bench"), `${record.benchId}, ${told.face.name}`],
      [words.t("versions"), `${told.rulePackVersion}, ${source.softwareVersion}`],
    ],
  });
};

/** At most so high, so that the table of the cables begins on the same page. */
const mostFigurePt = 400;

const sensed: Section = (paper, { evidence: { told, view }, words }) => {
  const drawing = wiringDrawing(view, told.face, paper.widthPt, mostFigurePt);
  paper.heading(words.t("sensed"));
  const alt = words.t("sensed.alt", { cables: drawing.cables.length, stations: drawing.plates.length });
  paper.figure(alt, drawing.heightPt, (doc, box) => drawFigure(paper, doc, drawing, box, words));
  if (view.cables.length === 0) paper.paragraph(words.t("sensed.none"));
  paper.table({
    columns: [
      { title: words.t("cable"), share: 0.7 },
      { title: words.t("between"), share: 3.4 },
      { title: words.t("size"), share: 0.9 },
      { title: words.t("length"), share: 0.8 },
      { title: words.t("carries"), share: 1 },
      { title: words.t("needed"), share: 1 },
      { title: words.t("cores"), share: 1.2 },
    ],
    rows: cableRows(view, told.face, words),
  });
  paper.table({
    columns: [
      { title: words.t("station"), share: 0.7 },
      { title: words.t("name"), share: 3 },
      { title: words.t("settings"), share: 4 },
    ],
    rows: stationRows(view, told.face, words),
  });
  for (const joint of view.joints) paper.paragraph(words.t("joints", { contacts: places(joint, words) }));
  if (view.unknown.length > 0) paper.paragraph(words.t("unknown", { contacts: places(view.unknown, words) }));
};

const places = (ids: readonly string[], words: RecordWords): string =>
  ids.map((id) => words.place(id)).join(", ");

const findings: Section = (paper, { evidence: { view, leastChange }, record, words }) => {
  paper.heading(words.t("findings"));
  if (record.handedInWallMs === null) paper.paragraph(words.t("findings.open"));
  const { verdict } = view;
  if (!verdict) return;
  if (verdict.findings.length === 0) paper.paragraph(words.t("findings.none"));
  for (const { title, where, what, why, remedy, reference, inFull } of verdict.findings) {
    paper.paragraph(title, "bold");
    paper.paragraph([inFull?.where ?? where, inFull?.what ?? what, why, remedy, reference].join(" "));
  }
  for (const { text } of verdict.undetermined) paper.paragraph(text);
  const least = verdict.proposal === "met" ? [] : leastChange();
  if (least.length > 0) paper.paragraph(words.t("least", { what: least.join(" ") }));
  paper.paragraph(words.t("proposal", { answer: words.named("answer", verdict.proposal) }), "bold");
  paper.heading(words.t("requirements"));
  paper.table({
    columns: [
      { title: words.t("requirements"), share: 4 },
      { title: words.t("answer"), share: 1 },
    ],
    rows: verdict.requirements.map(({ text, inFull, answer }) => [
      inFull ?? text,
      words.named("answer", answer),
    ]),
  });
};

const readings: Section = (paper, { evidence, words }) => {
  paper.heading(words.t("readings"));
  const rows = readingRows(evidence, words);
  if (rows.length === 0) paper.paragraph(words.t("readings.none"));
  paper.table({
    columns: [
      { title: words.t("test"), share: 2.4 },
      { title: words.t("where"), share: 3.4 },
      { title: words.t("reading"), share: 1.2 },
      { title: words.t("judged"), share: 0.8 },
    ],
    rows,
  });
};

const seal = (bytes: Uint8Array): string | undefined => {
  const { content } = eventOfBytes(bytes);
  const { signature } = content as { signature?: unknown };
  return typeof signature === "string" ? signature : undefined;
};

const hashes: Section = (paper, { evidence: { rows }, source, words }) => {
  paper.heading(words.t("hashes"));
  paper.paragraph(words.t("hashes.about"));
  const shown = rows.filter(({ type }) => words.named("type", type) !== type);
  paper.table({
    columns: [
      { title: words.t("record"), share: 1.3 },
      { title: words.t("time"), share: 1.7 },
      { title: words.t("hash"), share: 4.6 },
    ],
    sizePt: 7.8,
    rows: shown.map(({ type, wallMs, hash }) => [words.named("type", type), words.time(wallMs), hexOf(hash)]),
  });
  const boot = rows[0] && source.logReader.lastOfType("boot", rows[0].benchId);
  const { publicKey } = (boot ? eventOfBytes(boot.bytes).content : {}) as { publicKey?: string };
  if (publicKey !== undefined) paper.paragraph(words.t("key", { key: shortKey(publicKey) }));
  for (const { type, bytes } of rows) {
    const signature = type === "sealed" ? seal(bytes) : undefined;
    if (signature !== undefined) paper.paragraph(words.t("signature", { signature }));
  }
};

/** The record from top to bottom. */
export const recordSections: readonly Section[] = [
  head,
  sensed,
  findings,
  readings,
  ...decisionSections,
  hashes,
];
