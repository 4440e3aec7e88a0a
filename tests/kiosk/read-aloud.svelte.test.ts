import { describe, expect, it } from "vitest";
import { taskLines } from "../../shared/text/task-lines.ts";
import { byId, showBench } from "./show-bench.ts";
import { local, putInPlace, SpeechDouble } from "./speech/speech-double.ts";
import { attempt, bench, ringOpen, sampleView, verdict, type ViewName } from "./views.ts";

const tongues = { en: "en-GB", pl: "pl-PL" } as const;
/** Parts of what is read of the second half's screens, as a voice is given them. */
const readings = {
  en: {
    meter: ["more than 1999 ohms simulated", "Red. Way 1 a N", "never proof of dead"],
    record: ["Ring 1: end to end. L. 0.27 ohms · Pass simulated. right", "N. not yet"],
    hunt: ["Points: 3 of 7", "Broken core", "You named it", "You did not name it"],
    heat: ["The device of Way 1 opens first", "96 °C", "does not protect this cable"],
    numbers: ["30 amps of 32 amps: may have opened", "24 amps, 80 %"],
  },
  pl: {
    meter: ["ponad 1999 omów symulacja", "Czerwona. Pole 1 a N"],
    record: ["0,27 oma · Dobry symulacja. dobrze", "N. jeszcze nie"],
    hunt: ["Punkty: 3 z 7", "Przerwana żyła", "Nazwano ją dobrze"],
    heat: ["Pierwszy wyłączy wyłącznik (Pole 1)", "96 °C"],
    numbers: ["30 amperów z 32 ampery: mógł już wyłączyć", "24 ampery, 80 %"],
  },
} as const;
const on = (id: string) => document.querySelector(`[data-testid="${id}"]`);
const settled = () => new Promise((done) => setTimeout(done, 50));
const press = async (id: string): Promise<void> => {
  byId(id).click();
  await settled();
};

describe.each(["en", "pl"] as const)("read aloud, in %s", (language) => {
  const show = async (view: ViewName) => {
    const double = putInPlace(new SpeechDouble());
    await showBench({ view: sampleView(view, { language }) });
    return double;
  };
  const said = ({ spoken }: SpeechDouble) => spoken.map(({ text }) => text).join(" ");
  const task = taskLines(sampleView("wire").attempt!.scenario.task[language]);
  const byVoiceOfTheLanguage = ({ spoken }: SpeechDouble) => {
    expect(spoken.length).toBeGreaterThan(0);
    for (const { lang, voice } of spoken)
      expect([lang, voice]).toEqual([tongues[language], tongues[language]]);
  };

  it.each([
    "sign-in",
    "scenarios",
    "caution",
    "make-dead",
    "plan",
    "wire",
    "ring-fault",
    "hand-in",
    "assessed",
    "assessed-done",
  ] as const)("says what to do now on the screen %s, by a voice of the language", async (view) => {
    const double = await show(view);
    await press("key-read-main");
    byVoiceOfTheLanguage(double);
    const line = byId("say").textContent ?? "";
    expect(double.spoken[0]?.text.replace(/\.$/, "")).toBe(line.trim().replace(/\.$/, ""));
  });

  it("reads what the meter shows and where its probes are, what is on record, and what a hunt came to", async () => {
    const parts = readings[language];
    const double = await show("test");
    await press("key-read-main");
    for (const part of parts.meter) expect(said(double)).toContain(part);
    await press("meter-tab-record");
    await press("key-read-main");
    await press("key-read-main");
    for (const part of parts.record) expect(said(double)).toContain(part);
    const after = await show("hunt-outcome");
    // It comes with its own words, a moment after the screen.
    await expect.poll(() => document.querySelector('[data-testid="hunt-outcome"]')).not.toBeNull();
    await press("key-read-main");
    for (const part of parts.hunt) expect(said(after)).toContain(part);
  });

  it("reads what the plot comes to, and the numbers of the step Load", async () => {
    const parts = readings[language];
    const double = await show("load");
    await press("load-tab-heat");
    await press("key-read-main");
    for (const part of parts.heat) expect(said(double)).toContain(part);
    await press("load-tab-numbers");
    await press("key-read-main");
    await press("key-read-main");
    for (const part of parts.numbers) expect(said(double)).toContain(part);
  });

  it("reads the caution in full", async () => {
    const double = await show("caution");
    await press("key-read-main");
    for (const item of document.querySelectorAll("[data-testid='screen-caution'] li"))
      expect(said(double)).toContain(item.textContent);
    expect(double.spoken).toHaveLength(6);
  });

  it("reads the task before it is chosen, and in the menu", async () => {
    const double = await show("scenarios");
    await press("key-read-main");
    for (const { text } of task.asks) expect(said(double)).toContain(text);
    double.finish();
    const other = await show("wire");
    await press("key-menu");
    await press("key-task");
    await press("key-read-dialog");
    byVoiceOfTheLanguage(other);
    for (const { text } of task.asks) expect(said(other)).toContain(text);
  });

  it("reads the open question of the plan, and what is fed", async () => {
    const double = await show("plan");
    await press("key-read-main");
    const question = byId("question-deviceRatingA").querySelector("[data-read]")?.textContent;
    expect(question).toMatch(/\(In\)/);
    expect(said(double)).toContain(question);
    expect(said(double)).not.toContain(byId("question-csaMm2").textContent);
  });

  it("reads the steps of making dead", async () => {
    const double = await show("make-dead");
    await press("key-read-main");
    for (const item of document.querySelectorAll("[data-testid^='dead-step-']"))
      expect(said(double)).toContain(item.textContent?.trim());
  });

  it("reads the notes with their hints, and one note: why, then how to put it right, then where", async () => {
    const double = putInPlace(new SpeechDouble());
    const hint = { en: "Look at the ring.", pl: "Spójrz na pierścień." };
    const faulty = sampleView("ring-fault", { language });
    const hints = { used: 1, left: 2, shown: [hint] };
    await showBench({ view: { ...faulty, attempt: { ...faulty.attempt!, hints } } });
    await press("key-notes");
    await press("key-read-aside");
    byVoiceOfTheLanguage(double);
    expect(said(double)).toContain(ringOpen.title);
    expect(said(double)).toContain(hint[language]);
    double.finish();
    await settled();
    const before = double.spoken.length;
    await press("finding-ring-open");
    await press("key-read-aside");
    const note = double.spoken.slice(before).map(({ text }) => text);
    const at = [ringOpen.title, ringOpen.why, ringOpen.remedy, ringOpen.where].map((part) =>
      note.findIndex((text) => text.includes(part)),
    );
    expect(at).toEqual(at.toSorted((a, b) => a - b));
    expect(at).not.toContain(-1);
  });

  it("reads what the task asks for and how it stands, where it is handed in and after", async () => {
    const double = await show("hand-in");
    await press("key-read-main");
    const requirements = sampleView("hand-in").attempt!.verdict!.requirements;
    for (const { text } of requirements) expect(said(double)).toContain(text);
    const done = putInPlace(new SpeechDouble());
    const handedIn = { ...sampleView("hand-in").attempt!, status: "handed-in" as const };
    await showBench({ view: { ...sampleView("hand-in", { language }), attempt: handedIn } });
    await press("key-read-main");
    byVoiceOfTheLanguage(done);
    for (const { text } of requirements) expect(said(done)).toContain(text);
  });
});

describe("the key that reads aloud", () => {
  it("stops what is being read, and stands as it was once all is said", async () => {
    const double = putInPlace(new SpeechDouble());
    const { screen } = await showBench({ view: sampleView("caution") });
    const key = screen.getByTestId("key-read-main");
    await expect.element(key).toHaveAccessibleName("Read aloud");
    await key.click();
    await expect.element(key).toHaveAccessibleName("Stop reading");
    await key.click();
    await expect.element(key).toHaveAccessibleName("Read aloud");
    const count = double.spoken.length;
    await key.click();
    expect(double.spoken.length).toBe(count * 2);
    double.finish();
    await expect.element(key).toHaveAccessibleName("Read aloud");
  });

  it("is silent once the screen is another", async () => {
    putInPlace(new SpeechDouble());
    const { screen, show } = await showBench({ view: sampleView("caution") });
    await screen.getByTestId("key-read-main").click();
    await show({ view: sampleView("plan") });
    await expect.element(screen.getByTestId("key-read-main")).toHaveAccessibleName("Read aloud");
  });

  it.each([
    { what: "no voice at all", voices: [] },
    { what: "none of the language", voices: [local("pl-PL")] },
    { what: "one that sends texts away", voices: [{ ...local("en-GB"), localService: false }] },
  ])("does not stand there where the browser has $what", async ({ voices }) => {
    putInPlace(new SpeechDouble(voices));
    await showBench({ view: sampleView("caution") });
    expect(on("key-read-main")).toBeNull();
  });

  it("comes when a voice comes", async () => {
    const double = putInPlace(new SpeechDouble([]));
    const { screen } = await showBench({ view: sampleView("caution") });
    double.bring([local("en-US")]);
    await expect.element(screen.getByTestId("key-read-main")).toBeVisible();
  });

  it("reads nothing that is not to be seen: an assessed go tells no verdict", async () => {
    const double = putInPlace(new SpeechDouble());
    await showBench({
      view: bench({ attempt: attempt({ mode: "assessed", step: "hand-in", verdict: null }) }),
    });
    await press("key-read-main");
    const said = double.spoken.map(({ text }) => text).join(" ");
    expect(said).not.toMatch(/proposes|not yet/);
    expect(verdict({}).requirements.every(({ text }) => !said.includes(text))).toBe(true);
  });
});
