import { describe, expect, it } from "vitest";
import { evidenceSource } from "../../../server/evidence/evidence-source.ts";
import { readLetters, runsOf } from "../../../server/evidence/record/letters.ts";
import { hexOf } from "../../../server/store/row-hash.ts";
import type { Language } from "../../../shared/text/languages.ts";
import { letters, readPdf } from "../../read-pdf.ts";
import { readFileSync } from "node:fs";
import Pdf from "pdfkit";
import { Paper } from "../../../server/evidence/record/paper.ts";
import { readBoardFile, scenarioKit } from "../../../server/library.ts";
import { breakerOfTask } from "../../../server/attempt/circuit-chart.ts";
import { deadSequenceOn } from "../dead-sequence.ts";
import { putOnRecord } from "../put-on-record.ts";
import { wireAnswer } from "../wire-answer.ts";
import { answers, benchWithWork, byStaff, handIn } from "../desk/assessed-work.ts";
import { rightCables, TestBench } from "../test-bench.ts";
import { fileOf } from "./file-of.ts";

const pdfOf = async (bench: TestBench, id: string, language: Language = "en"): Promise<Uint8Array> =>
  new Uint8Array(await fileOf(bench, "record.pdf", id, language));

const decideAndSeal = async (bench: TestBench, id: string): Promise<void> => {
  await byStaff(bench, "assessor", "observe", {
    attempt: id,
    seen: "Łukasz left one core out; Жук read 0.35 Ω.",
    observerSays: "",
    learnerSays: "Sorry.",
  });
  await byStaff(bench, "assessor", "decide", {
    attempt: id,
    criteria: answers({ safe: { answer: "not-yet", reason: "One leg would carry it all." } }),
    says: "Look at the second socket again.",
  });
  await byStaff(bench, "assessor", "seal-decision", { attempt: id });
  await byStaff(bench, "verifier", "review", { attempt: id, answer: "agreed", says: "As I see it." });
};

describe("the record of an attempt on paper", () => {
  it("has the attempt's numbers, what people added and every hash, read back by another program", async () => {
    const { bench, id } = await benchWithWork({ isSealing: true });
    await bench.does("declare-own-work", {});
    await decideAndSeal(bench, id);
    await byStaff(bench, "assessor", "release", { attempt: id });
    await bench.does("see-decision", { attempt: id });
    const { text } = await readPdf(await pdfOf(bench, id));
    const evidence = evidenceSource(bench.bench.core)?.evidenceOf(id, {
      language: "en",
    });
    expect(evidence?.view.cables).toHaveLength(rightCables.length);
    for (const { csaMm2, lengthM = 0, carries } of evidence?.view.cables ?? []) {
      expect(text).toContain(letters(`${csaMm2} mm² ${Number(lengthM.toFixed(1))} m`));
      expect(text).toContain(letters(`${carries?.ratingA} A ${carries?.neededA} A`));
    }
    const least = evidence?.leastChange() ?? [];
    expect(least).not.toEqual([]);
    expect(text).toContain(letters(`The least that puts all of it right: ${least.join(" ")}`));
    for (const { where, what, why } of evidence?.view.verdict?.findings ?? [])
      expect(text).toContain(letters(`${where} ${what} ${why}`));
    for (const told of [
      "Bryony Cole",
      "The ring is open",
      "The bench proposes: not yet.",
      "Łukasz left one core out; Жук read 0.35 Ω.",
      "The learner says: Sorry.",
      "met not yet valid, authentic, current, sufficient One leg would carry it all.",
      "Look at the second socket again.",
      "L missing",
      "As I see it.",
      "Real circuits can kill",
      "seen by the learner",
      ...bench.events("sealed").map(({ content }) => `Signature: ${String(content["signature"])}`),
      id,
    ])
      expect(text).toContain(letters(told));
    const people = new Set([
      "attempt-started",
      "handed-in",
      "observed",
      "decided",
      "decision-sealed",
      "reviewed",
      "released",
      "decision-seen",
      "sealed",
    ]);
    const hashes = bench
      .rows()
      .flatMap(({ attemptId, type, hash }) =>
        (attemptId === id || type === "sealed") && people.has(type) ? [hexOf(hash)] : [],
      );
    expect(hashes).toHaveLength(10);
    for (const hash of hashes) expect(text).toContain(letters(hash));
  });

  it("has every reading that was written down, with what it was called", async () => {
    const kit = scenarioKit(readFileSync("scenarios/test-a-ring.json"), "test-a-ring.json");
    if ("problems" in kit) throw new Error("the task cannot be read");
    const { board, bytes } = readBoardFile("hardware/boards/workshop.json");
    const parts = { board, boardBytes: bytes };
    const bench = await new TestBench({ isSimulated: false, scenarios: [kit], parts }).start();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: kit.scenario.id, mode: "practice" });
    await bench.does("accept-caution", {});
    for (const act of deadSequenceOn(breakerOfTask(kit.stripped))) await bench.does("dead-act", act);
    await bench.does("go-to-step", { step: "wire" });
    const [built] = kit.scenario.modelAnswers;
    if (!built) throw new Error("the task has no answer");
    await wireAnswer(bench, built, board);
    await putOnRecord(bench, built);
    await bench.does("hand-in", {});
    const { text } = await readPdf(await pdfOf(bench, bench.attempt().id));
    const read = (built.readings ?? []).flatMap(({ resistanceOhm, insulationMegohm }) => [
      ...(resistanceOhm === undefined ? [] : [`${resistanceOhm.toFixed(2)} Ω pass`]),
      ...(insulationMegohm === undefined ? [] : [`${insulationMegohm.toFixed(2)} MΩ pass`]),
    ]);
    expect(read.length).toBeGreaterThan(3);
    for (const one of read) expect(text).toContain(letters(one));
  });

  it("says what is agreed with the learner, for whoever gives it; nothing where nothing is", async () => {
    const bench = await new TestBench({ hasDemo: false }).start();
    const { people } = bench.parts;
    const by = { by: "bench", session: null } as const;
    const added = await people.list.add(
      { name: "Bryony Cole", role: "learner", badge: "SPURWISE-DEMO-02" },
      by,
    );
    const learner = "id" in added ? added.id : "";
    const id = await handIn(bench);
    const told = () => evidenceSource(bench.bench.core)?.evidenceOf(id, { language: "en" })?.told;
    expect(told()?.agreed).toBeNull();
    const adjustments = { extraTimePercent: 25, hasRests: true, isLarge: false, isReadAloud: true };
    people.list.adjust(learner, adjustments, by);
    expect(told()?.agreed).toEqual(adjustments);
    expect((await readPdf(await pdfOf(bench, id, "pl"))).text).toContain(
      letters("25 % więcej czasu, przerwy na odpoczynek, teksty czytane na głos."),
    );
    people.list.erase(learner, by);
    expect(told()?.agreed).toBeNull();
  });

  it("draws two wirings that differ in one core differently, and one wiring always the same", async () => {
    const { bench, id } = await benchWithWork();
    const one = await pdfOf(bench, id);
    expect(Buffer.compare(await pdfOf(bench, id), one)).toBe(0);
    const whole = await (await new TestBench().start()).isWiring("assessed");
    for (const [from, to] of rightCables) await whole.cable(from, to, 2.5);
    await whole.does("hand-in", {});
    const other = await readPdf(await pdfOf(whole, whole.attempt().id));
    const { drawn } = await readPdf(one);
    const [with3, with2] = [other.drawn[0] ?? [], drawn[0] ?? []];
    const extra = with3.filter((path) => !with2.includes(path));
    // The core that is there in the one and left out in the other, on its ground and in its colour.
    expect(extra.length).toBeGreaterThan(0);
    expect(with2.filter((path) => !with3.includes(path))).toEqual([]);
    expect(other.text).not.toContain("Lmissing");
  });

  it("is tagged for who has it read out, with its letters inside, in both languages", async () => {
    const { bench, id } = await benchWithWork();
    await decideAndSeal(bench, id);
    const bytes = await pdfOf(bench, id, "pl");
    const { text, roles, info } = await readPdf(bytes);
    expect(text).toContain(letters("Zapis pracy na stanowisku"));
    expect(text).toContain(letters("jeszcze nie"));
    expect([...roles]).toEqual(
      expect.arrayContaining(["Document", "H1", "H2", "P", "Table", "TR", "TH", "TD", "Figure"]),
    );
    expect(info).toMatchObject({ Language: "pl" });
    const raw = Buffer.from(bytes).toString("latin1");
    const fonts = [...raw.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name]) => name);
    expect(fonts.some((name) => name?.includes("AtkinsonHyperlegible"))).toBe(true);
    // Each font has its letters with it, and the document says that it is tagged (ISO 32000-1, 9.9 and 14.7.1).
    const count = (pattern: RegExp): number => [...raw.matchAll(pattern)].length;
    expect(count(/\/FontFile2 /g)).toBeGreaterThan(1);
    expect(count(/\/FontFile2 /g)).toBe(count(/\/Type \/FontDescriptor/g));
    expect(raw).toMatch(/\/Marked true/);
  });
});

describe("a table on paper", () => {
  it("has its head above the first row of each page, wherever on a page it begins", async () => {
    const typefaces = readLetters();
    for (let before = 46; before < 60; before += 2) {
      const doc = new Pdf({ autoFirstPage: false, pdfVersion: "1.7", tagged: true });
      const pieces: Uint8Array[] = [];
      doc.on("data", (piece: Uint8Array) => pieces.push(piece));
      const paper = new Paper(doc, typefaces, () => "");
      for (let line = 0; line < before; line += 1) paper.paragraph("Before.");
      const rows = Array.from({ length: 30 }, () => ["row\nof\nfour\nlines"]);
      paper.table({ columns: [{ title: "Headed", share: 1 }], rows });
      paper.end();
      await new Promise((resolve) => doc.on("end", resolve));
      const { pages } = await readPdf(new Uint8Array(Buffer.concat(pieces)));
      const has = (what: RegExp): boolean[] => pages.map((page) => what.test(page));
      expect(has(/Headedrow/), `after ${before} lines`).toEqual(has(/row|Headed/));
      expect(has(/row/).filter((is) => is).length).toBeGreaterThan(1);
    }
  });
});

describe("the letters of a record", () => {
  it("are the project's own where they have a character, and others only for what they have not", () => {
    const { regular } = readLetters();
    const runs = runsOf("Łęki 0.35 Ω, Жук", regular);
    expect(runs.map(({ text }) => text).join("")).toBe("Łęki 0.35 Ω, Жук");
    for (const { face, text } of runs)
      for (const character of text) expect(face.has(character), character).toBe(true);
    const foreign = runs.filter(({ face }) => face.name.includes("noto-sans")).map(({ text }) => text);
    expect(foreign.map((text) => text.replace(/[ ,.]/g, ""))).toEqual(["Ω", "Жук"]);
    expect(runsOf("漢", regular).map(({ text }) => text)).toEqual(["?"]);
  });
});
