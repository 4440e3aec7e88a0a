import { createHash } from "node:crypto";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { ContactId } from "../../shared/board/ids.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import { joinsToCables } from "../../shared/wiring/joins-to-cables.ts";
import { groupsOf, type Plugged } from "../../shared/wiring/plugged.ts";
import type { ResolvedSettings } from "../../shared/wiring/settings.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { ScenarioKit } from "../library.ts";
import type { AttemptState } from "./attempt-state.ts";
import { foundNames } from "./hunt-result.ts";
import { builtOf, settingsOf, sizeCables, type SizedCable } from "./settings.ts";

/** The wiring of a moment with its verdict. */
export interface Judged {
  wiring: Wiring;
  wiringHash: string;
  verdict: Verdict;
}

/** What the board looks like at a moment, as drawn and as judged. */
export interface Picture {
  cables: readonly SizedCable[];
  /** Groups of three contacts or more: plugs stacked on one another, or a short. */
  joints: readonly ContactId[][];
  settings: ResolvedSettings;
  /** What is wired, made the first time it is asked for. */
  wiring: () => Wiring;
  /** Judged the first time it is asked for. */
  judged: () => Judged;
}

type PictureState = Pick<AttemptState, "declared" | "readings"> &
  Partial<Pick<AttemptState, "hunt" | "status">>;

/** What a picture is made with, the same for every moment of an attempt. */
export interface PictureParts {
  kit: ScenarioKit;
  board: BoardDescription;
  judge: (wiring: Wiring) => Verdict;
}

/**
 * The picture of a moment: what is plugged, with what was declared and measured until then. The same for the same
 * moment, on the bench, in a replay and in an export.
 */
export function pictureOf(
  { kit, board, judge }: PictureParts,
  plugged: Plugged,
  { declared, readings, hunt, status }: PictureState,
): Picture {
  // What was found is told at the hand-in; before it a verdict would tell a guess from a find.
  const namedFaults = hunt && status === "handed-in" ? foundNames(hunt) : undefined;
  const groups = groupsOf(plugged.joins);
  const joined = joinsToCables(groups, (a, b) => kit.routeBetween(a, b)?.lengthM);
  const settings = settingsOf(kit.stripped, board, joined, plugged, { declared });
  const cables = sizeCables(joined, kit.stripped, settings);
  let made: Wiring | undefined;
  const wiring = (): Wiring =>
    (made ??= toWiring({
      scenario: kit.stripped,
      board,
      built: builtOf(kit.stripped, cables, settings),
      unknown: plugged.unknown,
      readings,
      namedFaults,
      routeBetween: kit.routeBetween,
    }));
  const judgeNow = (): Judged => {
    const wiringHash = createHash("sha256").update(JSON.stringify(wiring())).digest("hex");
    return { wiring: wiring(), wiringHash, verdict: judge(wiring()) };
  };
  let judged: Judged | undefined;
  return {
    cables,
    joints: groups.filter(({ length }) => length > 2),
    settings,
    wiring,
    judged: () => (judged ??= judgeNow()),
  };
}
