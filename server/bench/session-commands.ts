import type { BenchCommand } from "../../shared/protocol/commands.schema.ts";
import { done, refuse, type Refusal } from "../refusal.ts";
import type { BenchCore, Person } from "./bench-core.ts";
import { endChecks, isAssessing } from "./board-check.ts";

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
  const state = core.run?.state ?? core.toResume;
  return isAssessing(core) && learner !== null && state?.learner === learner.id;
}

/** Who works at the bench from now on. What they left open is there again; what another left open is not shown. */
export function signIn(core: BenchCore, command: BenchCommand<"sign-in">): Answer {
  const person = personOf(core, command);
  if ("ok" in person) return person;
  if (person.by !== "badge" && isAssessed(core, person)) return refuse("badge-needed");
  core.person = person;
  core.undo = [];
  core.remember({ person: { learnerId: person.learner?.id ?? null, by: person.by } });
  return done;
}

/** Locks the bench. The work is kept: an open attempt goes on when the same person signs in again. */
export function signOut(core: BenchCore): Answer {
  core.person = null;
  endChecks(core);
  core.learners = core.parts.records?.learners.all() ?? [];
  core.undo = [];
  core.remember({ person: null });
  return done;
}

/** Who stood at the bench when it stopped, where the class list still has them. */
export function rememberedPerson(core: BenchCore): Person | null {
  const { person } = core.memory;
  if (!person) return null;
  if (person.learnerId === null) return { learner: null, by: "guest" };
  const learner = core.parts.records?.learners.byId(person.learnerId);
  return learner ? { learner, by: person.by } : null;
}
