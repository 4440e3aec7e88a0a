import { v7 as uuidV7 } from "uuid";
import { z } from "zod";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { noteSignIn } from "../bench/note-sign-in.ts";
import { endHealthTools } from "../bench/board-health.ts";
import { ownScreen, refusalOfPin } from "../people/people.ts";
import { badgeSchema, isStaff, type Person, type Staff } from "../people/person.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("name"), learner: z.string().min(1).max(64) }),
  z.strictObject({ by: z.literal("badge"), badge: badgeSchema }),
  z.strictObject({ by: z.literal("guest") }),
  z.strictObject({ by: z.literal("pin"), person: z.string().min(1).max(64), pin: z.string().min(1).max(12) }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "sign-in": z.infer<typeof schema>;
  }
}

/**
 * Who works at the bench from now on, or who of the staff unlocks it. What they left open is there again; what another
 * left open is not shown.
 */
export const signIn: Act<"sign-in"> = {
  schema,
  who: anybodyAtBench,
  isFree: true,
  states: always,
  whileFrozen: true,
  does: async ({ core }, message) => {
    if (message.by === "guest") return work(core, null, "guest");
    const person = await personOf(core, message);
    if ("ok" in person) return person;
    if (message.by === "name")
      return isStaff(person) ? refuse("unknown-learner") : work(core, person, "name");
    if (isStaff(person)) return unlock(core, person, message.by);
    return work(core, person, "badge");
  },
};

async function personOf(
  { parts }: BenchCore,
  message: Exclude<ActMessage<"sign-in">, { by: "guest" }>,
): Promise<Person | Refusal> {
  switch (message.by) {
    case "name":
      return parts.people.byId(message.learner) ?? refuse("unknown-learner");
    case "badge":
      return parts.people.byBadge(message.badge, ownScreen).catch(refusalOfPin);
    case "pin":
      return parts.people.byPin(message.person, message.pin, ownScreen).catch(refusalOfPin);
  }
}

/** A learner or a guest works at the bench. */
function work(core: BenchCore, learner: Person | null, by: "name" | "badge" | "guest") {
  // A tap on a name is no proof of who goes on with assessed work.
  const isOwn = learner !== null && core.work.state?.learner === learner.id;
  if (by !== "badge" && core.work.isAssessed && isOwn) return refuse("badge-needed");
  core.session.signIn({ learner, by });
  const isLarge = learner && core.parts.people.toldOf(learner.id)?.adjustments?.isLarge;
  if (isLarge) core.session.remember({ isLarge });
  core.work.forgetUndos();
  return done;
}

/** One of the staff unlocks the screen; the log has who it was, by what they showed, and their session. */
function unlock(core: BenchCore, staff: Staff, by: "badge" | "pin") {
  const session = uuidV7();
  noteSignIn(core, staff, session, by, "own-screen");
  core.session.unlock(staff, session);
  endHealthTools(core);
  core.work.forgetUndos();
  return done;
}
