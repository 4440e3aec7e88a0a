import { type Export, evidenceReaders } from "../export.ts";

/** One attempt on paper: drawn as it was sensed, with findings, readings, what people added, signatures and hashes. */
export const recordPdf: Export = {
  name: "record.pdf",
  mediaType: "application/pdf",
  who: evidenceReaders,
  of: "attempt",
  async *pieces(source, record, asked) {
    // A record is asked for now and then: until then the bench does not carry what writes it.
    const { writeRecord } = await import("./write-record.ts");
    yield* writeRecord(source, record, asked);
  },
};
