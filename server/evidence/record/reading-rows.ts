import { wordings } from "../../../shared/rules/wording/languages.ts";
import type { AttemptEvidence } from "../attempt-evidence.ts";
import type { RecordWords } from "./record-words.ts";

type Value = {
  [Key in "resistanceOhm" | "insulationMegohm" | "impedanceOhm" | "currentA" | "tripMs"]?: number | undefined;
} & {
  isOverRange?: boolean | undefined;
  isNoTrip?: boolean | undefined;
  isPolarityRight?: boolean | undefined;
};

/** What was written down, with its unit. */
function valueText(value: Value, words: RecordWords): string {
  const ohm = value.resistanceOhm ?? value.impedanceOhm;
  if (ohm !== undefined) return `${words.shown(ohm, 2)} Ω`;
  if (value.insulationMegohm !== undefined) return `${words.shown(value.insulationMegohm, 2)} MΩ`;
  if (value.currentA !== undefined) return `${words.number(value.currentA, 0)} A`;
  if (value.tripMs !== undefined) return `${words.number(value.tripMs, 1)} ms`;
  if (value.isNoTrip) return words.t("no-trip");
  if (value.isOverRange) return words.t("over");
  if (value.isPolarityRight !== undefined) return words.t(value.isPolarityRight ? "right" : "wrong");
  return "–";
}

const probes = (points: readonly (string | undefined)[], words: RecordWords): string =>
  points.flatMap((point) => (point === undefined ? [] : [words.place(point)])).join(" – ");

/** The readings of a record, dead tests and then live ones. */
export function readingRows({ readings, liveReadings }: AttemptEvidence, words: RecordWords): string[][] {
  const { tests } = wordings[words.language].terms;
  const called = (judged: "pass" | "fail" | undefined): string =>
    judged === undefined ? "–" : words.t(`judged.${judged}`);
  return [
    ...readings.map((one) => [
      tests[one.test],
      probes([one.red, one.black], words) || words.place(one.way),
      valueText(one, words),
      called(one.judged),
    ]),
    ...liveReadings.map((one) => [
      words.t(one.test),
      probes([one.red, one.black], words) || words.place(one.way),
      valueText(one, words),
      called(one.judged),
    ]),
  ];
}
