import { expect, type Page, test } from "@playwright/test";
import { en } from "../../kiosk/text/en.ts";
import { pl } from "../../kiosk/text/pl.ts";
import { type BenchProcess, startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";

declare global {
  interface Window {
    said: [text: string, lang: string][];
  }
}

/** A Chromium of the checks has no voice: it gets one of each language, and what they are given is kept. */
const giveVoices = (page: Page) =>
  page.addInitScript(() => {
    window.said = [];
    const voices = ["en-GB", "pl-PL"].map((lang) => ({
      lang,
      name: lang,
      localService: true,
      default: false,
    }));
    const speech = window.speechSynthesis;
    speech.getVoices = () => voices as SpeechSynthesisVoice[];
    speech.speak = ({ text, lang }) => void window.said.push([text, lang]);
    // The real one takes no voice but its own.
    Object.defineProperty(SpeechSynthesisUtterance.prototype, "voice", { writable: true, value: null });
  });

// Each has a bench of its own.
test.describe.configure({ mode: "parallel" });

for (const { language, texts, voice, said, inNote } of [
  { language: "en", texts: en, voice: "en-GB", said: "ring", inNote: ["device", "ring", "way"] },
  {
    language: "pl",
    texts: pl,
    voice: "pl-PL",
    said: "pierścień",
    inNote: ["pierścień", "pole", "przekrój", "wyłącznik"],
  },
] as const)
  test.describe(
    `the words of the trade at 800x480, in ${language}`,
    { tag: language === "en" ? [] : "@sweep" },
    () => {
      test.use({ viewport: { width: 800, height: 480 } });
      let running: BenchProcess;
      test.beforeEach(async () => {
        running = await startBench({ board: "workshop" });
      });
      test.afterEach(() => running.stop());

      test("are told at a tap in the task, in a note and at the tests, and all of it is read aloud", async ({
        page,
      }) => {
        await giveVoices(page);
        const bench = new BenchScreen(page);
        const tapWord = async (within: string, word: keyof typeof en & `word.${string}`): Promise<void> => {
          const id = word.slice("word.".length);
          await bench.get(within).locator(`[data-word="${id}"]`).first().tap();
          const told = bench.get("dialog-words").locator(".asked");
          await expect(told.locator("dt")).toContainText(texts[word]);
          await expect(told.locator("dd")).toHaveText(texts[`${word}.means` as keyof typeof en]);
          await expect(told).toBeInViewport();
          await bench.get("key-close").tap();
        };
        await page.goto(running.address);
        await bench.get("key-menu").tap();
        await bench.get(`key-language-${language}`).tap();
        await bench.chooseTask("ring-and-spurs");
        await bench.wireByTaps("way-1", "socket-1");
        await bench.get("key-menu").tap();
        await bench.get("key-task").tap();
        await tapWord("dialog-task", "word.spur");
        await bench
          .get("dialog-task")
          .getByTestId(/^key-read-/)
          .tap();
        const spoken = await page.evaluate(() => window.said);
        expect(spoken.map(([text]) => text).join(" ")).toContain(said);
        expect(new Set(spoken.map(([, lang]) => lang))).toEqual(new Set([voice]));
        await bench.get("key-close").tap();
        await bench.get("key-check").tap();
        await bench.get("finding-ring-cable").tap();
        await tapWord("note-finding-ring-cable", "word.device");
        await bench.get("key-note-words").tap();
        const listed = bench.get("dialog-words").locator("dt");
        await expect(listed.first()).toBeVisible();
        expect((await listed.allTextContents()).slice(0, inNote.length)).toEqual(
          inNote.map((word) => `${word}:`),
        );
        await bench.get("key-close").tap();
        await bench.get("step-test").tap();
        await bench.get("meter-tab-record").tap();
        await tapWord("meter-record", "word.R1-R2");
      });
    },
  );
