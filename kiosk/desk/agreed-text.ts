import type { Adjustments } from "../../shared/protocol/keep-view.ts";
import type { DeskWords } from "./desk-words.svelte.ts";

/** What is agreed with a learner, in one line; empty where nothing is. */
export const agreedText = (
  { extraTimePercent, hasRests, isLarge, isReadAloud }: Adjustments,
  words: Pick<DeskWords, "t">,
): string =>
  [
    extraTimePercent > 0 ? words.t("agreed.more", { percent: extraTimePercent }) : "",
    hasRests ? words.t("agreed.rests") : "",
    isLarge ? words.t("agreed.large") : "",
    isReadAloud ? words.t("agreed.read") : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
