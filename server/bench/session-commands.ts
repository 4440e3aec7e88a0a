import type { BenchCommand } from "../../shared/protocol/commands.schema.ts";
import { done, refuse, type Refusal } from "../refusal.ts";
import type { BenchCore } from "./bench-core.ts";
import { endRun } from "./end-run.ts";
import { isOwnAttempt } from "./start-attempt.ts";
import { endChecks } from "./board-check.ts";
import type { Person } from "./session.ts";

type Answer = { ok: true } | Refusal;

function personOf(core: BenchCore, command: BenchCommand<"sign-in">): Person | Refusal {
  const learners = core.parts.records?.learners;
  if (command.by === "guest") return { learner: null, by: "guest" };
  if (command.by === "name") {
    const learner = learners?.byId(command.learner);
    return learner ? { learner, by: "name" } : refuse("unknown-learner");
  }
  const learner = learners?.byBadge(command.badge);
  return learner ? { learner, by: "badge" } : refuse("unknown-badge");
}

/** True where this person's assessed work lies open: a tap on a name is no proof of who goes on with it. */
function isAssessed(core: BenchCore, { learner }: Person): boolean {
  return core.work.isAssessed && learner !== null && core.work.state?.learner === learner.id;
}

/** Who works at the bench from now on. What they left open is there again; what another left open is not shown. */
export function signIn(core: BenchCore, command: BenchCommand<"sign-in">): Answer {
  const person = personOf(core, command);
  if ("ok" in person) return person;
  if (person.by !== "badge" && isAssessed(core, person)) return refuse("badge-needed");
  core.session.signIn(person);
  core.work.forgetUndos();
  return done;
}

/**
 * Locks the bench. The work is kept: an open attempt goes on when the same person signs in again. A guest's work
 * ends: nobody can tell whether the next guest is the same.
 */
export function signOut(core: BenchCore): Answer {
  if (core.session.person?.by === "guest" && isOwnAttempt(core)) endRun(core, "left");
  core.session.signOut();
  endChecks(core);
  core.work.forgetUndos();
  return done;
}
