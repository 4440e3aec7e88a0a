import type { StaffView } from "../../shared/protocol/bench-view.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { Staff } from "../people/person.ts";

/** The work that lies open on the bench, and whose it is. */
function workView({ work, parts }: BenchCore): StaffView["work"] {
  const { state } = work;
  if (!work.isOpen || !state) return undefined;
  const name = state.learner === null ? "" : (parts.people.byId(state.learner)?.name ?? state.learner);
  const isWaitingForTrainer = state.isTrainerNeeded || work.toResume?.mode === "assessed";
  return { name, mode: state.mode, isWaitingForTrainer };
}

/** What the staff are told on a screen where `me` of them is signed in. */
export function staffView(core: BenchCore, me: Staff | null): StaffView {
  const { people, isNetworkOpen } = core.parts;
  const { firstStartCode, isDemonstration } = people;
  const work = me?.role === "trainer" ? workView(core) : undefined;
  const isChosen = core.session.memory.isNetworkChosen;
  return {
    me: me && { name: me.name, role: me.role },
    unlockers: me ? [] : core.session.unlockers.map(({ id, name, role }) => ({ id, name, role })),
    // Whoever works at the bench has no use for it.
    ...(firstStartCode === undefined || core.session.person || me ? {} : { firstStartCode }),
    ...(isDemonstration ? { isDemonstration } : {}),
    ...(work ? { work } : {}),
    ...(me?.role === "technician"
      ? {
          network: { isOpen: isNetworkOpen, isChosen },
          people: { staff: core.session.staffList.filter(({ id }) => id !== me.id), held: core.session.held },
        }
      : {}),
  };
}
