import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { markWords } from "../../../kiosk/text/mark-words.ts";
import { hintWords } from "../../../server/attempt/hint-words.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { wordings } from "../../../shared/rules/wording/languages.ts";
import { makeExercise } from "../../../shared/scenario/exercise/make-exercise.ts";
import { exerciseLevels, exerciseTopics } from "../../../shared/scenario/exercise/exercise-words.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { type Language, languages } from "../../../shared/text/languages.ts";
import { everyText } from "./every-text.ts";

/**
 * Words of the trade a learner may meet, by their stems: those of BS 7671 part 2 and of a domestic course, and the Polish ones
 * of PN-HD 60364. The kiosk's own list is not among its sources, so that a word it lacks is found.
 */
const glossary: Record<Language, readonly string[]> = {
  en: [
    "accessor(?:y|ies)",
    "adiabatic",
    "ampacity",
    "bond(?:ed|ing)",
    "breakers?",
    "bus-?bars?",
    "cartridge",
    "ceiling roses?",
    "circuits?",
    "circuit-breakers?",
    "circuit protective",
    "competent",
    "conductors?",
    "conduits?",
    "consumer units?",
    "contactors?",
    "continuity",
    "cooker controls?",
    "cores?",
    "cpcs?",
    "csa",
    "dead",
    "devices?",
    "disconnect\\w*",
    "discrimination",
    "distribution board",
    "diversity",
    "double-pole",
    "earth\\w*",
    "electrodes?",
    "enclosures?",
    "energis\\w*",
    "equipotential",
    "extra-low",
    "extraneous",
    "exposed-conductive",
    "fault currents?",
    "fault loop",
    "FCUs?",
    "ferrules?",
    "flex",
    "fuses?",
    "fused connection units?",
    "glands?",
    "impedance",
    "insulat\\w*",
    "intermediate",
    "isolat\\w*",
    "junction box(?:es)?",
    "lampholders?",
    "legs?",
    "let-through",
    "line",
    "live",
    "lock(?:ed)? off",
    "loads?",
    "luminaires?",
    "MCBs?|RCBOs?|RCDs?|SPDs?|AFDDs?|RCCBs?",
    "megger",
    "methods?",
    "neutrals?",
    "null(?:ed)?",
    "overcurrent",
    "overload\\w*",
    "PELV|SELV|FELV",
    "phase",
    "points?",
    "polarity",
    "poles?",
    "potential",
    "prospective",
    "protective",
    "R1|R2",
    "radials?",
    "rated|ratings?",
    "residual",
    "resistance",
    "rewir(?:e)?ables?",
    "rings?",
    "selectivity",
    "semi-enclosed",
    "short circuits?",
    "sizes?|undersized",
    "sleeving",
    "spurs?",
    "strappers?",
    "switched line",
    "switchgear",
    "terminals?",
    "thermal",
    "TN-C-S|TN-S|TT",
    "trip(?:s|ped|ping)?",
    "trunking",
    "two-way",
    "volt(?:age)? drop",
    "withstand",
    "Z[es]",
  ],
  pl: [
    "\\p{L}*biegunow\\p{L}*",
    "bezpieczni[kc]\\p{L}*",
    "charakterysty\\p{L}*",
    "ciągłoś\\p{L}*",
    "dławnic\\p{L}*",
    "faz(?:a|y|ę|ie|ą|ow\\p{L}*)",
    "impedancj\\p{L}*",
    "izolacj\\p{L}*",
    "korespondencyjn\\p{L}*",
    "koryt(?:o|a|ka|ek|ku)",
    "krzyżow\\p{L}*",
    "liniow\\p{L}*",
    "MCB|RCBO|RCD|SPD|AFDD",
    "metod\\p{L}*",
    "nadprądow\\p{L}*",
    "napięci\\p{L}* dotykow\\p{L}*",
    "neutraln\\p{L}*",
    "obciąże\\p{L}*",
    "obciążalno\\p{L}*",
    "obw[oó]d\\p{L}*",
    "ochronnik\\p{L}*",
    "ochronn\\p{L}*",
    "ociepl\\p{L}*",
    "odbiornik\\p{L}*",
    "odgałęzi\\p{L}*",
    "odłącz\\p{L}*",
    "opraw(?:k\\p{L}*|ek|ce)",
    "osprzę\\p{L}*",
    "pętl\\p{L}* zwarcia",
    "pierście\\p{L}*",
    "pod napięciem",
    "bez napięcia|brak\\p{L}* napięcia",
    "promieniow\\p{L}*",
    "prąd\\p{L}* znamionow\\p{L}*",
    "przeciąż\\p{L}*",
    "przekr[oó]j\\p{L}*",
    "przepięci\\p{L}*",
    "punkt\\p{L}*",
    "pusz(?:k\\p{L}*|ce|ek)",
    "R1|R2",
    "ramię|rami(?:on|eni)\\p{L}*",
    "rezystancj\\p{L}*",
    "rozdzielnic\\p{L}*",
    "rozet\\p{L}*|rozecie",
    "rozłącznik\\p{L}*",
    "różnicowoprąd\\p{L}*",
    "rurk\\p{L}*|rurce",
    "schodow(?:y|e|ego|ym|ymi|ych)",
    "selektywn\\p{L}*",
    "SELV|PELV|FELV",
    "spad\\p{L}* napięcia",
    "szyn(?:a|y|ę|ie|ą|ow\\p{L}*)",
    "TN-C-S|TN-S|TT",
    "tulejk\\p{L}*",
    "uprawni\\p{L}*",
    "uzi(?:om|em)\\p{L}*",
    "wyłącznik\\p{L}*",
    "wyrównawcz\\p{L}*",
    "zacisk\\p{L}*",
    "zadziała\\p{L}*",
    "załączan\\p{L}*",
    "zwarci\\p{L}*",
    "żył(?:a|y|ę|ą|om|ach|ami)?|żyle",
    "Zs|Ze(?=\\))",
  ],
};

const inGlossary = Object.fromEntries(
  languages.map((language) => [
    language,
    new RegExp(`(?<![\\p{L}\\d])(?:${glossary[language].join("|")})(?![\\p{L}\\d])`, "giu"),
  ]),
) as Record<Language, RegExp>;

/** Words of the trade in a text that the screen does not explain there. */
const unexplained = (text: string, language: Language): string[] =>
  markWords(text, language)
    .map(({ text: part, word }) => (word ? "·" : part))
    .join("")
    .match(inGlossary[language]) ?? [];

const scenarios = readdirSync("scenarios").map(
  (name) => JSON.parse(readFileSync(`scenarios/${name}`, "utf8")) as Scenario,
);

/** Of the bench screen, what is not for a learner: staff, technician, the board's own faults. */
const notForLearners = /^(?:word|no-board|fault|health|staff|banner|bench|role|self-check|refused|show)\./;

const stringsIn = (node: unknown): string[] =>
  typeof node === "string"
    ? [node]
    : typeof node === "object" && node !== null
      ? Object.values(node).flatMap(stringsIn)
      : [];

function learnersTexts(language: Language): [where: string, text: string][] {
  const { catalogue, terms } = wordings[language];
  const ofScreen = Object.entries(everyText[language]).filter(([key]) => !notForLearners.test(key));
  const exercises = exerciseTopics.flatMap((topic) =>
    exerciseLevels.map((level) => makeExercise({ topic, level, seed: 7 }, judge)!),
  );
  const tasks = [...scenarios, ...exercises].flatMap(
    ({ id, title, teaches, task, hints = [] }): [string, string][] =>
      [title, teaches, task, ...hints].map((text) => [id, text[language]]),
  );
  const ofRules = Object.entries(catalogue).flatMap(([id, words]) =>
    stringsIn(words).map((text): [string, string] => [id, text]),
  );
  const { requirements, undetermined, fields, tests } = terms;
  const ofTerms = stringsIn({ requirements, undetermined, fields, tests });
  const hints = Object.values(hintWords).map((text) => text[language]);
  return [
    ...ofScreen,
    ...tasks,
    ...ofRules,
    ...[...ofTerms, ...hints].map((text): [string, string] => ["terms and hints", text]),
  ];
}

describe.each(languages)("what a learner reads in %s", (language) => {
  it("has no word of the trade that is not explained on a tap", () => {
    const texts = learnersTexts(language);
    expect(texts.length).toBeGreaterThan(900);
    const found = texts.flatMap(([where, text]) =>
      unexplained(text.replaceAll(/\{[^}]*\}/g, "3"), language).map((word) => `${where}: ${word}: ${text}`),
    );
    expect(found).toEqual([]);
  });
});

describe("a word of the trade that nobody explained", () => {
  it.each([
    ["en", "Bond it to the busbar of the circuit.", ["busbar"]],
    ["en", "The prospective fault current", ["prospective"]],
    ["pl", "Połącz szynę wyrównawczą z obwodem.", ["szynę", "wyrównawczą"]],
  ] as const)("is found, in %s: %s", (language, text, words) => {
    expect(unexplained(text, language)).toEqual(words);
  });
});
