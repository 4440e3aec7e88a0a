import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import workshop from "../../../hardware/boards/workshop.json" with { type: "json" };
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { languages, type Language } from "../../../shared/text/languages.ts";

const scenarios = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .map((name) => {
    const read = readScenario(readFileSync(`scenarios/${name}`, "utf8"), name);
    if (!read.ok) throw new Error(`${name} cannot be read`);
    return read.value;
  });

/** Every sentence of a scenario that a learner reads, in one language. */
const sentencesOf = ({ task, teaches, hints = [] }: Scenario, language: Language): string[] =>
  [task, teaches, ...hints].flatMap((text) =>
    text[language]
      .split(/(?<=[.?!:])\s+|\n/)
      .map((sentence) => sentence.trim())
      .filter((sentence) => sentence !== "" && !/^\d+\.$/.test(sentence)),
  );

/** How a text calls a kind of station before its number: what stands there in any case of the language. */
const calls: Record<Language, [RegExp, string][]> = {
  en: [
    [/socket outlets?/, "socket"],
    [/\bways?/, "way"],
    [/FCU\)?/, "fcu"],
    [/junction box/, "junction-box"],
    [/[Ll]ights?/, "wall-light"],
    [/[Ss]witch(?:es)?/, "plate-switch"],
    [/roses?/, "ceiling-rose"],
  ],
  pl: [
    [/[Gg]nia?[zź]d\w*/, "socket"],
    [/\bpol[aeu]\w*/, "way"],
    [/FCU\)?/, "fcu"],
    [/puszk\w+/, "junction-box"],
    [/[Ll]amp\w*/, "wall-light"],
    [/(?<![a-zł])[Łł]ącznik\w*/, "plate-switch"],
    [/roze(?:t\S*|cie)/, "ceiling-rose"],
  ],
};

/** The stations that a text names by word and number. */
const namedIn = (text: string, language: Language): string[] =>
  calls[language].flatMap(([word, id]) =>
    [...text.matchAll(new RegExp(`${word.source} (\\d+(?:(?:, | and | i )\\d+)*)`, "g"))].flatMap(
      ([, numbers = ""]) => [...numbers.matchAll(/\d+/g)].map(([number]) => `${id}-${number}`),
    ),
  );

describe.each(scenarios)("the texts of the scenario $id", (scenario) => {
  it.each(languages)("names stations only that the task has: %s", (language) => {
    const has = scenario.stations.map(({ id }) => id as string);
    const named = sentencesOf(scenario, language).flatMap((sentence) => namedIn(sentence, language));
    expect(named.length).toBeGreaterThan(0);
    for (const station of named) expect(has).toContain(station);
  });

  it("names the same stations in both languages", () => {
    const named = (language: Language) =>
      [...new Set(sentencesOf(scenario, language).flatMap((sentence) => namedIn(sentence, language)))].sort();
    expect(named("pl")).toEqual(named("en"));
  });

  // A board may have more entries than a scenario needs: what a text counts there would not be what is seen.
  it("counts no entries of a station", () => {
    for (const sentence of [...sentencesOf(scenario, "en"), ...sentencesOf(scenario, "pl")])
      expect(sentence).not.toMatch(/\bentr(y|ies)\b|wejś/);
  });

  it("has no sentence of more than 25 words", () => {
    for (const language of languages)
      for (const sentence of sentencesOf(scenario, language))
        expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25);
  });
});

describe("the check of stations in texts", () => {
  it("reads numbers in a row, and the board has each of what it reads", () => {
    expect(namedIn("Feed socket outlets 1, 2 and 5 from way 2.", "en")).toEqual([
      "socket-1",
      "socket-2",
      "socket-5",
      "way-2",
    ]);
    expect(namedIn("Zasil gniazda 1, 2 i 5 z pola 2, przez złącze FCU 1.", "pl")).toEqual([
      "socket-1",
      "socket-2",
      "socket-5",
      "way-2",
      "fcu-1",
    ]);
    for (const id of ["socket-1", "way-1", "fcu-1", "junction-box-1", "wall-light-1"])
      expect(workshop.stations.map((station) => station.id)).toContain(id);
  });
});
