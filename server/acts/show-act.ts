import { z } from "zod";
import { cableIdSchema, entryIdSchema } from "../../shared/board/ids.schema.ts";
import { noLeads } from "../../shared/board/board-leads.ts";
import { endsOfCable, endsOfConductor, entryOf } from "../../shared/board/ids.ts";
import { languages } from "../../shared/text/languages.ts";
import type { Reply } from "../../shared/protocol/reply.ts";
import { leadsOfDrawnCable } from "../board/leads-of-cables.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { cableToPlug } from "../bench/board-commands.ts";
import { done, refuse } from "../refusal.ts";
import { challengeCsaMm2 } from "../show/challenge.ts";
import { showBar } from "../view/show-view.ts";
import { type Act, always } from "./act.ts";

const schema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("touch") }),
  z.strictObject({ what: z.literal("speak"), language: z.enum(languages) }),
  z.strictObject({ what: z.literal("begin") }),
  z.strictObject({ what: z.literal("plug-cable"), entryA: entryIdSchema, entryB: entryIdSchema }),
  z.strictObject({ what: z.literal("pull"), cable: cableIdSchema }),
  z.strictObject({ what: z.literal("finish") }),
  z.strictObject({ what: z.literal("leave") }),
]);

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "show-act": z.infer<typeof schema>;
  }
}

const barred = { "in-use": "bench-in-use", "no-board": "no-board", "no-task": "no-fit" } as const;

/** What a visitor does at the show: nothing of it is anybody's work, and nothing is logged. */
export const showAct: Act<"show-act"> = {
  schema,
  who: ["nobody"],
  states: always,
  does: ({ core }, message) => {
    const bar = showBar(core);
    return bar ? refuse(barred[bar]) : doShown(core, message);
  },
};

async function doShown(core: BenchCore, message: z.infer<typeof schema>): Promise<Reply> {
  const { show } = core;
  const { isSimulated, port } = core.parts;
  switch (message.what) {
    case "touch":
      show.touch();
      return done;
    case "speak":
      show.speak(message.language);
      return done;
    case "begin":
      show.begin();
      return isSimulated ? port.request({ type: "set-leads", to: noLeads }) : done;
    case "finish":
      show.finish();
      return done;
    case "leave":
      show.leave();
      return done;
  }
  show.touch();
  if (show.leftMs === undefined) return refuse("no-attempt");
  if (!isSimulated) return refuse("real-board");
  if (message.what === "pull") {
    const [entryA, entryB] = endsOfCable(message.cable);
    const ends = show.plugged.joins
      .flatMap(endsOfConductor)
      .filter((contact) => [entryA, entryB].includes(entryOf(contact)));
    const leads = leadsOfDrawnCable(core.board.leads, message.cable, ends);
    return leads.length === 0 ? refuse("no-such-cable") : port.request({ type: "pull", what: { leads } });
  }
  const { entryA, entryB } = message;
  const found = cableToPlug(core, { entryA, entryB, csaMm2: challengeCsaMm2 });
  return "ok" in found ? found : port.request(found.request);
}
