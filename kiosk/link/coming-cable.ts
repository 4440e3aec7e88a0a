import { byId, cableId, endsOfCable, roleClass, stationOf } from "../../shared/board/ids.ts";
import { pairByCore } from "../../shared/board/pair-by-core.ts";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { AttemptView, BenchView, BoardFace, SensedCable } from "../../shared/protocol/bench-view.ts";
import { cornersOf, planWays } from "../../shared/scenario/plan-way.ts";
import { contactsOf } from "../wiring/contacts-of.ts";
import type { Send } from "./send.ts";

/** The cores that run straight from one end of a cable to the other. */
const straightCores = (
  { from, to }: Pick<SensedCable, "from" | "to">,
  face: BoardFace,
): SensedCable["conductors"] =>
  pairByCore(contactsOf(from, face), contactsOf(to, face))
    .map(([near, far]) => ({ from: near.id, to: far.id, class: roleClass(near.role) }))
    .toSorted((a, b) => byId(a.from, b.from));

type Plan = AttemptView["scenario"]["plan"];

/** The walls of a plan are cut once. */
const waysKnown = new WeakMap<Plan, ReturnType<typeof planWays>>();

const waysOf = (plan: Plan): ReturnType<typeof planWays> => {
  const ways = waysKnown.get(plan) ?? planWays(plan);
  waysKnown.set(plan, ways);
  return ways;
};

/** The work with a cable that is plugged now; undefined where there is none to plug, or where one is in already. */
export const withComing = (
  { attempt, board }: Pick<BenchView, "attempt" | "board">,
  { entryA, entryB, csaMm2 }: ActMessage<"plug-cable">,
): AttemptView | undefined => {
  const id = cableId(entryA, entryB);
  if (!attempt || !board || attempt.cables.some((cable) => cable.id === id)) return undefined;
  const [from, to] = endsOfCable(id);
  const way = waysOf(attempt.scenario.plan)(stationOf(from), stationOf(to));
  const conductors = straightCores({ from, to }, board);
  if (!way || conductors.length === 0) return undefined;
  const cable: SensedCable = {
    id,
    from,
    to,
    conductors,
    path: cornersOf(way.points),
    ...(csaMm2 === undefined ? {} : { csaMm2 }),
    isUnsaved: true,
  };
  return { ...attempt, cables: [...attempt.cables, cable].toSorted((a, b) => byId(a.id, b.id)) };
};

interface Foreseeing {
  send: Send;
  view: () => BenchView | null;
  /** Told the work with a cable that is asked for; undefined once it is refused or something else is asked for. */
  foresee: (work: AttemptView | undefined) => void;
}

const isPlugging = (name: ActName, _command: object): _command is ActMessage<"plug-cable"> =>
  name === "plug-cable";

/** Sends acts, and works out what a cable will be like while the server is at it. */
export const foreseeing = ({ send, view, foresee }: Foreseeing): Send => {
  let last: AttemptView | undefined;
  return async (name, command) => {
    const answer = send(name, command);
    const now = view();
    const coming = now && isPlugging(name, command) ? withComing(now, command) : undefined;
    last = coming;
    foresee(coming);
    const given = await answer;
    if (!given.ok && last === coming) foresee(undefined);
    return given;
  };
};
