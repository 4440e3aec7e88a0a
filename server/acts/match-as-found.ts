import { z } from "zod";
import { matchAsFound as makeAsFound } from "../bench/board-commands.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "match-as-found": z.infer<typeof schema>;
  }
}

/** Plugs what was found there, on the simulated board. */
export const matchAsFound: Act<"match-as-found"> = {
  schema,
  who: workers,
  states: ["make-dead", "wiring"],
  does: onOwnRun(makeAsFound),
};
