import Pdf from "pdfkit";
import type { AttemptRecord } from "../../store/attempt-record.ts";
import type { Asked } from "../attempt-evidence.ts";
import type { EvidenceSource } from "../export.ts";
import { readLetters } from "./letters.ts";
import { Paper } from "./paper.ts";
import { recordSections } from "./record-sections.ts";
import { RecordWords } from "./record-words.ts";

/** Writes the record of an attempt, piece by piece. The same attempt gives the same bytes. */
export async function* writeRecord(
  source: EvidenceSource,
  record: AttemptRecord,
  asked: Asked,
): AsyncGenerator<Uint8Array> {
  const evidence = source.evidenceOf(record.attemptId, asked);
  if (!evidence) throw new Error("the scenario or the board of this attempt can no longer be read");
  const words = new RecordWords(asked.language, evidence);
  const doc = new Pdf({
    autoFirstPage: false,
    pdfVersion: "1.7",
    // The types do not know it, the library does.
    subset: "PDF/UA" as "PDF/A-1",
    tagged: true,
    displayTitle: true,
    lang: asked.language === "en" ? "en-GB" : "pl",
    info: {
      Title: `${words.t("title")} ${record.attemptId}`,
      CreationDate: new Date(record.lastWallMs),
      Creator: `Spurwise ${source.softwareVersion}`,
    },
  });
  const id = record.attemptId;
  const foot = (page: number): string => `${words.t("foot", { id, page })}\n${words.t("caution")}`;
  const paper = new Paper(doc, readLetters(), foot);
  for (const section of recordSections) {
    section(paper, { evidence, record, source, words });
    const done: unknown = doc.read();
    if (done instanceof Uint8Array) yield done;
  }
  paper.end();
  for await (const piece of doc) yield piece as Uint8Array;
}
