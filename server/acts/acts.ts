import type { ActName } from "../../shared/protocol/acts.ts";
import type { Act } from "./act.ts";
import { acceptCaution } from "./accept-caution.ts";
import { addPerson } from "./add-person.ts";
import { adjustPerson } from "./adjust-person.ts";
import { answerPlan } from "./answer-plan.ts";
import { askExpected } from "./ask-expected.ts";
import { askHint } from "./ask-hint.ts";
import { askVerdict } from "./ask-verdict.ts";
import { chooseNetwork } from "./choose-network.ts";
import { chooseLoadCable } from "./choose-load-cable.ts";
import { clearBoard } from "./clear-board.ts";
import { clearLoads } from "./clear-loads.ts";
import { confirmResume } from "./confirm-resume.ts";
import { deadAct } from "./dead-act.ts";
import { declareDead } from "./declare-dead.ts";
import { declare } from "./declare.ts";
import { endAttempt } from "./end-attempt.ts";
import { energise } from "./energise.ts";
import { erasePerson } from "./erase-person.ts";
import { freezeBench } from "./freeze-bench.ts";
import { goToStep } from "./go-to-step.ts";
import { hideFault } from "./hide-fault.ts";
import { hideNext } from "./hide-next.ts";
import { unhideFault } from "./unhide-fault.ts";
import { handIn } from "./hand-in.ts";
import { holdPerson } from "./hold-person.ts";
import { leadAct } from "./lead-act.ts";
import { leadOrder } from "./lead-order.ts";
import { leaveAttempt } from "./leave-attempt.ts";
import { matchAsFound } from "./match-as-found.ts";
import { meterAct } from "./meter-act.ts";
import { moveLoadClock } from "./move-load-clock.ts";
import { nameFault } from "./name-fault.ts";
import { plug } from "./plug.ts";
import { plugCable } from "./plug-cable.ts";
import { probe } from "./probe.ts";
import { pull } from "./pull.ts";
import { ready } from "./ready.ts";
import { recordLiveReading } from "./record-live-reading.ts";
import { recordReading } from "./record-reading.ts";
import { renewPin } from "./renew-pin.ts";
import { resetBench } from "./reset-bench.ts";
import { selfCheck } from "./self-check.ts";
import { selfCheckCleared } from "./self-check-cleared.ts";
import { setLanguage } from "./set-language.ts";
import { setLarge } from "./set-large.ts";
import { setTime } from "./set-time.ts";
import { setUp } from "./set-up.ts";
import { showAct } from "./show-act.ts";
import { signIn } from "./sign-in.ts";
import { signOut } from "./sign-out.ts";
import { startAttempt } from "./start-attempt.ts";
import { switchAppliance } from "./switch-appliance.ts";
import { switchOff } from "./switch-off.ts";
import { takeBack } from "./take-back.ts";
import { testLead } from "./test-lead.ts";
import { undo } from "./undo.ts";
import { decide } from "./decide.ts";
import { declareOwnWork } from "./declare-own-work.ts";
import { drawSample } from "./draw-sample.ts";
import { observe } from "./observe.ts";
import { release } from "./release.ts";
import { review } from "./review.ts";
import { seeDecision } from "./see-decision.ts";
import { sealDecision } from "./seal-decision.ts";
import { viewSecond } from "./view-second.ts";
import { walkTest } from "./walk-test.ts";

/**
 * Every act there is. This list is the protocol: sockets and requests take these and no others, and the tests walk
 * it. An act that is declared in its file and left out here does not compile.
 */
export const acts: { readonly [Name in ActName]: Act<Name> } = {
  "set-language": setLanguage,
  "set-large": setLarge,
  "sign-in": signIn,
  "sign-out": signOut,
  "start-attempt": startAttempt,
  "leave-attempt": leaveAttempt,
  "accept-caution": acceptCaution,
  "go-to-step": goToStep,
  "dead-act": deadAct,
  "declare-dead": declareDead,
  "answer-plan": answerPlan,
  plug: plug,
  "plug-cable": plugCable,
  pull: pull,
  "match-as-found": matchAsFound,
  undo: undo,
  declare: declare,
  "ask-verdict": askVerdict,
  "ask-hint": askHint,
  probe: probe,
  "meter-act": meterAct,
  "record-reading": recordReading,
  "ask-expected": askExpected,
  "name-fault": nameFault,
  energise: energise,
  "switch-off": switchOff,
  "record-live-reading": recordLiveReading,
  "switch-appliance": switchAppliance,
  "move-load-clock": moveLoadClock,
  "choose-load-cable": chooseLoadCable,
  "clear-loads": clearLoads,
  ready: ready,
  "take-back": takeBack,
  "hand-in": handIn,
  "self-check": selfCheck,
  "self-check-cleared": selfCheckCleared,
  "walk-test": walkTest,
  "test-lead": testLead,
  "hide-fault": hideFault,
  "unhide-fault": unhideFault,
  "hide-next": hideNext,
  "set-up": setUp,
  "show-act": showAct,
  "add-person": addPerson,
  "adjust-person": adjustPerson,
  "hold-person": holdPerson,
  "erase-person": erasePerson,
  "renew-pin": renewPin,
  "confirm-resume": confirmResume,
  "end-attempt": endAttempt,
  "clear-board": clearBoard,
  "freeze-bench": freezeBench,
  "set-time": setTime,
  "reset-bench": resetBench,
  "lead-act": leadAct,
  "lead-order": leadOrder,
  "choose-network": chooseNetwork,
  "declare-own-work": declareOwnWork,
  observe: observe,
  decide: decide,
  "seal-decision": sealDecision,
  release: release,
  review: review,
  "see-decision": seeDecision,
  "view-second": viewSecond,
  "draw-sample": drawSample,
};
