import { describe, expect, it } from "vitest";
import { chainFaults } from "../../../hardware/lines/chain-faults.ts";
import { faultFacts } from "../../../kiosk/health/fault-facts.ts";
import { type BoardHealthKey, boardHealthTexts } from "../../../kiosk/text/board-health-texts.ts";
import { takeLateTexts } from "../../../kiosk/text/late-texts.ts";
import { bringLanguage, Words } from "../../../kiosk/text/words.svelte.ts";

const [swapped] = chainFaults({
  kind: "swapped-pins",
  swaps: [
    { signal: "load", pin: "latch" },
    { signal: "latch", pin: "load" },
  ],
});

describe("swapped pins", () => {
  it("are told in the language of the bench, with the names of the pin table", async () => {
    takeLateTexts(boardHealthTexts);
    const words = new Words<BoardHealthKey>();
    expect(words.t("health.swapped-pins", faultFacts(swapped?.facts, words))).toBe(
      "Signals are on the wrong pins: load on latch, latch on load.",
    );
    await bringLanguage("pl");
    words.language = "pl";
    expect(words.t("health.swapped-pins", faultFacts(swapped?.facts, words))).toBe(
      "Sygnały są na złych wyprowadzeniach: wczytanie (load) na miejscu zatrzask (latch), zatrzask (latch) na miejscu wczytanie (load).",
    );
  });

  it("leave the facts of every other fault as they are", () => {
    expect(faultFacts({ probe: "red" }, new Words())).toEqual({ probe: "red" });
    expect(faultFacts(undefined, new Words())).toEqual({});
  });
});
