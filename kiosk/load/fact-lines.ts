import type { LoadFacts } from "../../shared/protocol/load-view.ts";
import type { BoardFace } from "../../shared/protocol/bench-view.ts";
import type { LoadKey } from "../text/load-texts.ts";
import type { Words } from "../text/words.svelte.ts";
import { placeName } from "../wiring/place-name.ts";

const minutes = (seconds: number): number => Math.round(seconds / 6) / 10;

/** What the two hours come to, as sentences: what acts first, how warm the warmest cable gets, whether it is protected. */
export function factLines(
  { first, hottest, isUnprotected, untimed }: LoadFacts,
  face: BoardFace,
  words: Pick<Words<LoadKey>, "t" | "number" | "of" | "language" | "nameOf">,
): string[] {
  const lines: string[] = [];
  if (!first) lines.push(words.t("load.first.none"));
  else {
    const place = words.t(`load.by.${first.kind}` as LoadKey, { place: placeName(first.id, face, words) });
    const earliest = words.number(minutes(first.earliestS));
    lines.push(
      first.latestS === undefined
        ? words.t("load.first.may", { place, earliest })
        : words.t("load.first.must", { place, earliest, latest: words.number(minutes(first.latestS)) }),
    );
  }
  for (const station of untimed)
    lines.push(words.t("load.untimed", { place: placeName(station, face, words) }));
  if (hottest) {
    const most = words.number(Math.round(hottest.earlyC));
    lines.push(words.t(`load.hot.${hottest.state}`, { cable: placeName(hottest.cable, face, words), most }));
  }
  if (isUnprotected) lines.push(words.t("load.unprotected"));
  return lines;
}
