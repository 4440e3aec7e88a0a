import type { MeterFunction } from "../../shared/protocol/meter-words.ts";
import type { MeterShows, RecordedView } from "../../shared/protocol/test-view.ts";
import type { MeterKey } from "../text/meter-texts.ts";
import type { Words } from "../text/words.svelte.ts";

type Speaker = Pick<Words<MeterKey>, "t">;

/** A number as the display shows it: so many decimals, none dropped. */
export const fixed = (n: number, decimals: number, words: Speaker): string =>
  n.toFixed(decimals).replace(".", words.t("plan.point"));

/** What the display shows, large, and what there is to say of it, small. */
export function shownText(
  shows: MeterShows,
  dial: MeterFunction,
  words: Speaker,
): { large: string; small: string } {
  switch (shows.shows) {
    case "ohm":
      return { large: words.t("meter.ohm", { n: fixed(shows.resistanceOhm, 2, words) }), small: "" };
    case "megohm":
      return { large: words.t("meter.megohm", { n: fixed(shows.insulationMegohm, 2, words) }), small: "" };
    case "volts":
      return { large: words.t("meter.volt", { n: shows.voltageV }), small: "" };
    case "loop":
      return {
        large: words.t("meter.ohm", { n: fixed(shows.impedanceOhm, 2, words) }),
        small: words.t("meter.shows.loop", { current: words.t("meter.amp", { n: shows.currentA }) }),
      };
    case "trip":
      return { large: words.t("meter.ms", { n: shows.tripMs }), small: words.t("meter.shows.trip") };
    case "no-trip":
      return { large: words.t("meter.no-trip"), small: words.t("meter.shows.no-trip") };
    case "over-range":
    case "open":
      return { large: overRange(dial, words), small: words.t(`meter.shows.${shows.shows}`) };
    case "unclear":
      return { large: "?", small: words.t(`meter.shows.unclear-${shows.because}`) };
    case "press":
    case "live":
    case "unproved":
    case "dead":
      return { large: "– –", small: words.t(`meter.shows.${shows.shows}`) };
  }
}

function overRange(dial: MeterFunction, words: Speaker): string {
  switch (dial) {
    case "voltage":
    case "rcd":
      return "– –";
    case "insulation":
      return words.t("meter.over-megohm");
    default:
      return words.t("meter.over-ohm");
  }
}

/** What is on record of a reading. */
export function recordedText({ test, value, judged }: RecordedView, words: Speaker): string {
  const { resistanceOhm, insulationMegohm, impedanceOhm, currentA, tripMs, isOverRange, isNoTrip } = value;
  const ohm = resistanceOhm ?? impedanceOhm;
  const said = words.t(judged === "pass" ? "record.pass" : "record.fail");
  if (ohm !== undefined) return `${words.t("meter.ohm", { n: fixed(ohm, 2, words) })} · ${said}`;
  if (insulationMegohm !== undefined)
    return `${words.t("meter.megohm", { n: fixed(insulationMegohm, 2, words) })} · ${said}`;
  if (currentA !== undefined) return `${words.t("meter.amp", { n: currentA })} · ${said}`;
  if (tripMs !== undefined) return `${words.t("meter.ms", { n: tripMs })} · ${said}`;
  if (isNoTrip) return `${words.t("meter.no-trip")} · ${said}`;
  if (isOverRange)
    return `${words.t(test === "insulation" ? "meter.over-megohm" : "meter.over-ohm")} · ${said}`;
  return said;
}
