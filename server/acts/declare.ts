import { z } from "zod";
import { cableIdSchema, stationIdSchema } from "../../shared/board/ids.schema.ts";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import { settingKeys } from "../../shared/protocol/attempt-words.ts";
import { choicesOf } from "../../shared/scenario/setting-choices.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";
import type { Situation } from "./situation.ts";

const schema = z.strictObject({
  subject: z.union([cableIdSchema, stationIdSchema]),
  key: z.enum(settingKeys),
  value: z.union([z.number().positive(), z.string().max(20), z.boolean()]),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    declare: z.infer<typeof schema>;
  }
}

/** Says a size or setting that no plug code says. */
export const declare: Act<"declare"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: (situation, { subject, key, value }) =>
    isChoice(situation, { subject, key, value })
      ? events({ type: "setting", content: { subject, key, value, by: "learner" } })
      : refuse("not-a-choice"),
};

function isChoice({ scenario, cables }: Situation, { subject, key, value }: ActMessage<"declare">): boolean {
  const isOffered = choicesOf(scenario, key).includes(value);
  if (key === "csaMm2") return isOffered && cables.some((cable) => cable === subject);
  const station = scenario.stations.find(({ id }) => id === subject);
  return isOffered && (station?.chosen?.includes(key) ?? false);
}
