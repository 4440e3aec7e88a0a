import { staffEn } from "./staff-en.ts";
import { staffPl } from "./staff-pl.ts";
import type { LateTexts } from "./late-texts.ts";

type StaffKey = keyof typeof staffEn;

/** What the sheet of the staff says. */
export const staffTexts: LateTexts<StaffKey> = { en: staffEn, pl: staffPl };
