import { isToMend } from "../../shared/rules/rule.ts";
import { cableOfConductor } from "../../shared/board/ids.ts";
import type { AttemptView, Fact, Said } from "../../shared/protocol/bench-view.ts";
import type { SayKey } from "../../shared/protocol/said-keys.ts";
import { asFoundCables } from "../attempt/settings.ts";
import { isUnproved } from "./test-view.ts";
import type { AttemptToShow } from "./to-show.ts";

const say = (key: SayKey, facts: Record<string, Fact> = {}): Said => ({ key, facts });

/**
 * The one line that says what to do now. In an assessed attempt it goes by the step alone, and by what every
 * learner is asked for there: it never hangs on what is right.
 */
export function sayFor({ run }: AttemptToShow, view: Omit<AttemptView, "say">): Said {
  const { state, kit, cables } = run;
  if (state.isTrainerNeeded) return say("say.trainer-confirms");
  if (view.status === "handed-in") return say("say.handed-in");
  if (view.status === "ready") return say("say.ready");
  if (view.step === "caution") return say("say.caution");
  const isSettingUp = !state.entered.includes("wire");
  const asFound = asFoundCables(kit.stripped);
  const leftIn = new Set(state.leftIn.map(cableOfConductor));
  const strangeCount = cables.filter(({ id }) => !asFound.has(id) && (isSettingUp || leftIn.has(id))).length;
  if (strangeCount > 0) return say("say.clear-board", { cableCount: strangeCount });
  const asFoundCount = cables.filter(({ id }) => asFound.has(id)).length;
  switch (view.step) {
    case "make-dead":
    case "plan":
    case "hand-in":
      if (isSettingUp && asFoundCount < asFound.size)
        return say("say.as-found", { done: asFoundCount, total: asFound.size });
      if (view.step === "make-dead" && isDead(view))
        return say(state.hasBeenLive ? "say.dead-again" : "say.dead");
      return say(`say.${view.step}`);
    case "wire":
      return sayForWiring(view);
    case "test":
      if (isUnproved(state.meter)) return say("say.test-unproved");
      return say(state.hunt ? "say.hunt" : "say.test");
    case "load":
      return say(state.meter.supply === "holds" ? "say.load" : "say.load-off");
  }
}

const isDead = ({ dead }: Pick<AttemptView, "dead">): boolean =>
  dead.length > 0 && dead.every(({ isDone }) => isDone);

function sayForWiring(view: Omit<AttemptView, "say">): Said {
  const unsized = view.cables.find(({ asksSize }) => asksSize);
  if (unsized) return say("say.size", { cable: unsized.id });
  const unset = view.settings.find(({ value }) => value === undefined);
  if (unset) return say("say.setting", { station: unset.station });
  const { verdict } = view;
  if (!verdict?.isCurrent || verdict.isHeld) return say("say.wire");
  const count = verdict.findings.filter(({ weight }) => isToMend(weight)).length;
  if (count > 0) return say("say.mend", { count });
  return verdict.proposal === "met" ? say("say.sound") : say("say.wire");
}
