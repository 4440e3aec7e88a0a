import type { ScenarioCard } from "../../shared/protocol/bench-view.ts";
import type { ProgressView } from "../../shared/protocol/progress-view.ts";
import type { ProgressKey } from "../text/progress-texts.ts";
import type { Words } from "../text/words.svelte.ts";

/** What a learner's progress says, part by part with its lines: the same on the screen, on paper and in the file. */
export function progressLines(
  { goes, rules, next }: ProgressView,
  scenarios: readonly ScenarioCard[],
  words: Pick<Words<ProgressKey>, "t" | "of" | "language">,
): { title: string; lines: string[] }[] {
  const titleOf = (id: string): string => {
    const card = scenarios.find((one) => one.id === id);
    return card ? words.of(card.title) : id;
  };
  const day = new Intl.DateTimeFormat(words.language === "pl" ? "pl" : "en-GB", { dateStyle: "medium" });
  const ruleLine = ({ title, trippedCount, keptCount }: ProgressView["rules"][number]): string =>
    `${title}: ${words.t("progress.counts", { tripped: trippedCount, kept: keptCount })}`;
  const some = (
    lines: string[],
    none: "progress.tripping.none" | "progress.kept.none" | "progress.next.none",
  ) => (lines.length > 0 ? lines : [words.t(none)]);
  return [
    {
      title: words.t("progress.next"),
      lines: some(
        next.map(({ title, scenario }) => `${titleOf(scenario)} (${words.t("progress.for", { title })})`),
        "progress.next.none",
      ),
    },
    {
      title: words.t("progress.tripping"),
      lines: some(rules.filter(({ isTripping }) => isTripping).map(ruleLine), "progress.tripping.none"),
    },
    {
      title: words.t("progress.kept"),
      lines: some(rules.filter(({ isTripping }) => !isTripping).map(ruleLine), "progress.kept.none"),
    },
    {
      title: words.t("progress.goes"),
      lines: goes.map(
        ({ title, endedWallMs, outcome }) =>
          `${day.format(endedWallMs)} · ${title} · ${words.t(`progress.outcome.${outcome}`)}`,
      ),
    },
  ];
}
