import type { BoardFace } from "../../shared/protocol/bench-view.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { acts } from "../acts/acts.ts";
import type { Actor } from "../acts/actor.ts";
import type { Bench } from "../bench/bench.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { thawAlone } from "../bench/hold-bench.ts";
import { refuse } from "../refusal.ts";
import { benchReport } from "./bench-report.ts";
import type { LeadLink, Order } from "./lead-link.ts";
import type { PackKeeper } from "./pack-keeper.ts";

/** What a trainer at the lead is at this bench: a trainer on the network, by their id and session there. */
const actorOf = ({ by: { role, person, session } }: Order): Actor | undefined =>
  role === "trainer" ? { kind: role, learner: null, session, staff: person, isRemote: true } : undefined;

/** Ties a bench to the link with its lead. Returns what unties it. */
export function tieToLead(
  { core, handle }: { core: BenchCore; handle: Bench["handle"] },
  face: BoardFace,
  link: LeadLink,
  packs: PackKeeper,
): () => void {
  link.start({
    report: () => benchReport(core, face, packs.versions),
    order: (order) => {
      const actor = actorOf(order);
      if (!actor) return Promise.resolve(refuse("not-for-you"));
      const parsed = parseSafely<object>(acts[order.act].schema, order.message);
      if (!parsed.success) return Promise.resolve(refuse("bad-message", { where: order.act, what: "" }));
      return handle(order.act, parsed.data as never, { actor });
    },
    takePack: (sealed, lead) => packs.take(core, sealed, lead),
    lost: () => thawAlone(core),
  });
  return core.onPublish(() => {
    packs.applyIfFree(core);
    link.changed();
  });
}
