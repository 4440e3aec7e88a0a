import { z } from "zod";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Person } from "../bench/session.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

const schema = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("name"), learner: z.string().min(1).max(64) }),
  z.strictObject({ by: z.literal("badge"), badge: z.string().min(1).max(64) }),
  z.strictObject({ by: z.literal("guest") }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "sign-in": z.infer<typeof schema>;
  }
}

/** Who works at the bench from now on. What they left open is there again; what another left open is not shown. */
export const signIn: Act<"sign-in"> = {
  schema,
  who: ["nobody", "learner", "guest"],
  states: always,
  does: ({ core }, message) => {
    const person = personOf(core, message);
    if ("ok" in person) return person;
    if (person.by !== "badge" && isAssessed(core, person)) return refuse("badge-needed");
    core.session.signIn(person);
    core.work.forgetUndos();
    return done;
  },
};

function personOf(core: BenchCore, message: ActMessage<"sign-in">): Person | Refusal {
  const learners = core.parts.records?.learners;
  if (message.by === "guest") return { learner: null, by: "guest" };
  if (message.by === "name") {
    const learner = learners?.byId(message.learner);
    return learner ? { learner, by: "name" } : refuse("unknown-learner");
  }
  const learner = learners?.byBadge(message.badge);
  return learner ? { learner, by: "badge" } : refuse("unknown-badge");
}

/** True where this person's assessed work lies open: a tap on a name is no proof of who goes on with it. */
const isAssessed = ({ work }: BenchCore, { learner }: Person): boolean =>
  work.isAssessed && learner !== null && work.state?.learner === learner.id;
