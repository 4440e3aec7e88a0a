import { join } from "node:path";
import { type BoardDescription } from "../../shared/board/board.schema.ts";
import { type CableId, cableId, conductorId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFace, FindingView } from "../../shared/protocol/bench-view.ts";
import type { StoryFrame, StoryScene, StoryView } from "../../shared/protocol/show-view.ts";
import { isToMend } from "../../shared/rules/rule.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Language } from "../../shared/text/languages.ts";
import { nothingPlugged, type Plugged } from "../../shared/wiring/plugged.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { ringLegsA } from "../attempt/ring-legs.ts";
import { stillRun } from "../attempt/still-run.ts";
import { leadsOfSpecs } from "../board/leads-of-cables.ts";
import { deskViewOf } from "../desk/replay.ts";
import { folders } from "../folders.ts";
import { readBoardFile } from "../library.ts";
import { boardFace } from "../view/board-face.ts";
import { story, type StoryPicture } from "./story.ts";
import { storyKit } from "./story-house.ts";
import { unloggedState } from "./unlogged-state.ts";

type Bars = StoryFrame["bars"];
type Judge = (wiring: Wiring) => Verdict;

/** What of the board's plates stands in the house; the story is of no bench, and is the same on every board. */
const faceOf = (board: BoardDescription): BoardFace => {
  const face = boardFace(board, false);
  const isThere = new Set<string>(
    story.flatMap(({ pictures }) =>
      pictures.flatMap(({ cables }) => cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)])),
    ),
  );
  return { ...face, stations: face.stations.filter(({ id }) => isThere.has(id)) };
};

const pluggedBy = (board: BoardDescription, { cables }: StoryPicture): Plugged => ({
  ...nothingPlugged,
  joins: leadsOfSpecs(board, cables)
    .map((lead) => conductorId(...lead))
    .sort(),
});

/** The currents that a picture compares, in amperes. */
function barsOf({ currents }: StoryPicture, wiring: Wiring, { figures }: Verdict): Bars {
  if (currents === undefined) return [];
  if (currents === "legs") return ringLegsA(wiring).map((currentA) => ({ name: "leg", currentA }));
  const { designA, deviceA, ratingA } = figures.cables[currents.cable as CableId] ?? {};
  const all = [
    { name: "Ib", currentA: designA },
    { name: "In", currentA: deviceA },
    { name: "Iz", currentA: ratingA },
  ] as const;
  // Two at a time: each is held against the one before it.
  const shown = all.slice(0, all.findIndex(({ name }) => name === currents.upTo) + 1).slice(-2);
  return shown.flatMap(({ name, currentA }): Bars => (currentA === undefined ? [] : [{ name, currentA }]));
}

/** One picture of the story, drawn and judged as the bench would draw and judge it. */
function frameOf(
  picture: StoryPicture,
  name: string,
  { board, judge }: { board: BoardDescription; judge: Judge },
  language: Language,
): StoryFrame {
  const kit = storyKit(picture.house, name);
  const sizes = new Map(picture.cables.map(({ from, to, csaMm2 }) => [cableId(from, to), csaMm2]));
  const state = unloggedState(kit, pluggedBy(board, picture), (cable) => sizes.get(cable));
  const parts = { kit, board, judge };
  const attempt = deskViewOf(parts, state, language);
  const { wiring, verdict } = stillRun(parts, state).judged();
  const finding: FindingView | undefined = attempt.verdict?.findings.find(({ weight }) => isToMend(weight));
  const bars = picture.currents ? barsOf(picture, wiring, verdict) : (finding?.bars ?? []);
  const { line, isJudged } = picture;
  // While it is still being wired nothing is said of it: half a ring is no mistake.
  if (!isJudged) return { line, attempt: { ...attempt, verdict: null }, bars: picture.currents ? bars : [] };
  return {
    line,
    attempt,
    bars,
    verdict: finding ? "wrong" : "right",
    ...(finding ? { finding: { title: finding.title, why: finding.why } } : {}),
  };
}

const made = new Map<Language, Promise<StoryView>>();

/**
 * The story in a language; worked out once, a picture at a time with the rest of the program between them.
 *
 * @throws UnusableFileError where the board that it is told on is gone.
 */
export function storyView(language: Language, judge: Judge): Promise<StoryView> {
  const known = made.get(language) ?? tellStory(language, judge);
  made.set(language, known);
  return known;
}

/** The story anew, as a rules core judges it. @throws UnusableFileError where its board is gone. */
export async function tellStory(language: Language, judge: Judge): Promise<StoryView> {
  const { board } = readBoardFile(join(folders.boards, "workshop.json"));
  const scenes: StoryScene[] = [];
  for (const { name, pictures } of story) {
    const frames: StoryFrame[] = [];
    for (const picture of pictures) {
      await new Promise((resolve) => setImmediate(resolve));
      frames.push(frameOf(picture, name, { board, judge }, language));
    }
    scenes.push({ name, frames });
  }
  return { face: faceOf(board), scenes };
}
