import type { Language } from "../text/languages.ts";
import type { AttemptView, BoardFace, FindingView } from "./bench-view.ts";

/** Where a show screen finds its views. */
export const showNamespace = "/show";

/** Where the story of the show is had. */
export const storyData = "/show-data/story.json";

/** The ideas that the story tells, in their order. */
export const sceneNames = ["ring", "shares", "spur", "second-spur", "fuse", "protect"] as const;
export type SceneName = (typeof sceneNames)[number];

/** What the rules core says of a picture that is judged. */
export type StoryVerdict = "right" | "wrong";

/** One picture of the story: what is wired by then, and what was worked out of it. */
export interface StoryFrame {
  /** Of the sentences of its scene, from 1. */
  line: number;
  attempt: AttemptView;
  /** Left out while the scene is still being wired. */
  verdict?: StoryVerdict;
  finding?: Pick<FindingView, "title" | "why">;
  bars: NonNullable<FindingView["bars"]>;
}

export interface StoryScene {
  name: SceneName;
  frames: StoryFrame[];
}

/** The story as a screen draws it; always the same for a language. */
export interface StoryView {
  face: BoardFace;
  scenes: StoryScene[];
}

/** How a challenge ended, for whoever stands there. */
export interface ChallengeResult {
  outcome: "won" | "lost";
  /** What stands in the way; none where it was won or nothing can be said of the board. */
  finding?: Pick<FindingView, "title" | "what" | "why">;
  /** What the task asks for and is not there yet. */
  missing: string[];
}

/** Why nobody can try it now. */
export type ShowBar = "in-use" | "no-board" | "no-task";

/** Everything a show screen gets, whole. It holds no person. */
export interface ShowView {
  revision: number;
  language: Language;
  phase: "story" | "asked" | "challenge" | "result";
  /** The picture of the story that is looked at. */
  at: { scene: number; frame: number };
  bar?: ShowBar;
  board: BoardFace;
  /** What is wired, in the challenge and after it. */
  attempt?: AttemptView;
  /** Time that is left when this is sent; left out until the board is clear. */
  leftMs?: number;
  /** Leads of before that have to come out first. */
  inCount?: number;
  result?: ChallengeResult;
}
