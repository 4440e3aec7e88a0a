import { en } from "../../../kiosk/text/en.ts";
import { pl } from "../../../kiosk/text/pl.ts";
import { boardHealthTexts } from "../../../kiosk/text/board-health-texts.ts";
import { huntTexts } from "../../../kiosk/text/hunt-texts.ts";
import { loadTexts } from "../../../kiosk/text/load-texts.ts";
import { meterTexts } from "../../../kiosk/text/meter-texts.ts";
import { outcomeTexts } from "../../../kiosk/text/outcome-texts.ts";
import { progressTexts } from "../../../kiosk/text/progress-texts.ts";
import { showTexts } from "../../../kiosk/show/show-texts.ts";
import { staffTexts } from "../../../kiosk/text/staff-texts.ts";

const all = [
  { en, pl },
  boardHealthTexts,
  huntTexts,
  loadTexts,
  meterTexts,
  outcomeTexts,
  progressTexts,
  showTexts,
  staffTexts,
];

/** Every text of the bench screen by its key: those of the first load and those that come with a late screen. */
export const everyText: Record<"en" | "pl", Record<string, string>> = {
  en: Object.fromEntries(all.flatMap((texts) => Object.entries(texts.en))),
  pl: Object.fromEntries(all.flatMap((texts) => Object.entries(texts.pl))),
};

/** Keys that stand in more than one catalogue. */
export const doubledKeys: string[] = all
  .flatMap((texts) => Object.keys(texts.en))
  .filter((key, at, keys) => keys.indexOf(key) !== at);
