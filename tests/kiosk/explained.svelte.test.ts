import { tick } from "svelte";
import { describe, expect, it } from "vitest";
import { en } from "../../kiosk/text/en.ts";
import { pl } from "../../kiosk/text/pl.ts";
import { tradeWords } from "../../kiosk/text/trade-words.ts";
import { byId, showBench } from "./show-bench.ts";
import { sampleView } from "./views.ts";

const word = (within: string, id: string): HTMLElement => {
  const found = byId(within).querySelector<HTMLElement>(`[data-word="${id}"]`);
  if (!found) throw new Error(`the word ${id} is not marked in ${within}`);
  return found;
};
const explained = () => document.querySelector("[data-testid='dialog-words'] dt")?.firstChild?.textContent;
const settled = () => new Promise((done) => setTimeout(done, 50));

describe.each(["en", "pl"] as const)("a plan question, in %s", (language) => {
  it("explains its words at a touch where it is open, and opens at a touch where it is closed", async () => {
    const { screen } = await showBench({ view: sampleView("plan", { language }) });
    word("question-deviceRatingA", "In").click();
    await settled();
    expect(explained()).toBe("In");
    byId("key-close").click();
    await settled();
    expect(byId("question-designCurrentA").querySelector("[data-word]")).toBeNull();
    byId("question-designCurrentA").click();
    await settled();
    expect(document.querySelector("[data-testid='dialog-words']")).toBeNull();
    await expect
      .element(screen.getByTestId("question-designCurrentA"))
      .toHaveAttribute("aria-expanded", "true");
    word("question-designCurrentA", "Ib").click();
    await settled();
    expect(explained()).toBe("Ib");
  });

  it("and the bars beside it explain what they are named", async () => {
    await showBench({ view: sampleView("plan", { language }) });
    word("screen-plan", "Iz").click();
    await settled();
    expect(explained()).toBe("Iz");
  });
});

describe.each([
  { language: "en", told: "ring" },
  { language: "pl", told: "pierścień" },
] as const)("a word of the trade, in $language", ({ language, told }) => {
  it("is explained at a touch in the task, and the task comes back", async () => {
    await showBench({ view: sampleView("ring", { language }) });
    byId("key-menu").click();
    await settled();
    byId("key-task").click();
    await settled();
    word("dialog-task", "ring").click();
    await settled();
    expect(explained()).toBe(told);
    byId("key-close").click();
    await settled();
    expect(document.querySelector("[data-testid='dialog-words']")).toBeNull();
    expect(byId("dialog-task")).toBeTruthy();
  });

  it("is explained at a touch beside it, and not at one further off than a finger is wide", async () => {
    const { screen } = await showBench({ view: sampleView("ring", { language }) });
    byId("key-menu").click();
    await settled();
    byId("key-task").click();
    await settled();
    const marked = word("dialog-task", "ring");
    const { left, bottom } = marked.getBoundingClientRect();
    const touch = (x: number, y: number) =>
      marked.parentElement?.dispatchEvent(
        new MouseEvent("click", { clientX: x, clientY: y, bubbles: true, cancelable: true }),
      );
    touch(left - 200, bottom + 300);
    await settled();
    expect(screen.container.querySelector("[data-testid='dialog-words']")).toBeNull();
    touch(left, bottom + 10);
    await settled();
    expect(explained()).toBe(told);
  });
});

describe.each([
  { language: "en", texts: en },
  { language: "pl", texts: pl },
] as const)("every word of the trade, in $language", ({ language, texts }) => {
  it("is explained at a touch wherever a task has it", async () => {
    const told = (word: (typeof tradeWords)[number]) => texts[`word.${word}`];
    // As it stands in a sentence: a symbol in brackets, a way with its number, a device with its type.
    const stands: Partial<Record<(typeof tradeWords)[number], string>> = {
      way: `${told("way")} 1`,
      "device-type": `${told("device-type")} B`,
      factors: "Ca 0.9",
    };
    const inText = tradeWords.map(
      (word) => stands[word] ?? (/^[IZ][bnztse]$/.test(word) ? `(${told(word)})` : told(word)),
    );
    const sample = sampleView("ring", { language });
    const task = { ...sample.attempt!.scenario.task, [language]: inText.join(", ") };
    const scenario = { ...sample.attempt!.scenario, task };
    await showBench({ view: { ...sample, attempt: { ...sample.attempt!, scenario } } });
    byId("key-menu").click();
    await settled();
    byId("key-task").click();
    await settled();
    for (const each of tradeWords) {
      word("dialog-task", each).click();
      await tick();
      expect(explained()).toBe(told(each));
      byId("key-close").click();
      await tick();
    }
  });
});
