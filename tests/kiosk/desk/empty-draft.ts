import { emptyDraft } from "../../../kiosk/desk/author/draft.ts";

const same = (text: string) => ({ en: text, pl: text });

/** A draft with nothing in it. */
export const none = emptyDraft(
  "own-x",
  { title: same("x"), place: same("x"), teaches: same("x"), opening: same("x") },
  { earthing: "TN-C-S", zeOhm: 0.35 },
);
