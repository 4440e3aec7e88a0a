import { describe, expect, it } from "vitest";
import { foreseeing, withComing } from "../../../kiosk/link/coming-cable.ts";
import { type CableId, type EntryId, stationId } from "../../../shared/board/ids.ts";
import type { ActMessage } from "../../../shared/protocol/acts.ts";
import type { AttemptView } from "../../../shared/protocol/bench-view.ts";
import type { Reply } from "../../../shared/protocol/reply.ts";
import { rightCables, TestBench } from "../../server/test-bench.ts";
import { workshopFace } from "../faces.ts";
import { attempt, bench, spurScenario } from "../views.ts";

const plugged = (entryA: string, entryB: string, csaMm2?: number): ActMessage<"plug-cable"> => ({
  entryA: entryA as EntryId,
  entryB: entryB as EntryId,
  ...(csaMm2 === undefined ? {} : { csaMm2 }),
});

describe("a cable that is plugged from the page", () => {
  it.each(["practice", "assessed"] as const)("is foreseen as the bench will show it, in %s", async (mode) => {
    const server = await (await new TestBench().start()).isWiring(mode);
    const idsOf = (cables: AttemptView["cables"] = []) => cables.map(({ id }) => id);
    for (const [entryA, entryB] of rightCables)
      for (const ends of [[entryB, entryA] as const, [entryA, entryB] as const]) {
        const before = server.view();
        const foreseen = withComing(before, plugged(...ends, 2.5));
        await server.does("plug-cable", plugged(...ends, 2.5));
        const { cables } = server.attempt();
        expect(idsOf(foreseen?.cables)).toEqual(idsOf(cables));
        const isNew = ({ id }: { id: CableId }) => !idsOf(before.attempt?.cables).includes(id);
        expect(cables.find(isNew)).toMatchObject(foreseen?.cables.find(isNew) ?? {});
        if (ends[0] === entryB) await server.does("undo", {});
      }
    expect(server.attempt().cables).toHaveLength(rightCables.length);
  });

  it("leaves all other work as it is", () => {
    const view = bench({ attempt: attempt(), board: workshopFace });
    const foreseen = withComing(view, plugged("way-1.a", "socket-1.a"));
    expect({ ...foreseen, cables: [] }).toEqual(view.attempt);
    expect(foreseen?.cables).toMatchObject([{ id: "socket-1.a~way-1.a", isUnsaved: true }]);
    expect(foreseen?.cables[0]).not.toHaveProperty("csaMm2");
  });

  it("is not foreseen where it is in, where no work is open, or where it cannot be drawn", () => {
    const view = bench({ attempt: attempt(), board: workshopFace });
    const first = withComing(view, plugged("way-1.a", "socket-1.a"));
    expect(withComing({ ...view, attempt: first ?? null }, plugged("socket-1.a", "way-1.a"))).toBeUndefined();
    expect(withComing({ ...view, attempt: null }, plugged("way-1.a", "socket-1.a"))).toBeUndefined();
    expect(withComing({ ...view, board: null }, plugged("way-1.a", "socket-1.a"))).toBeUndefined();
    expect(withComing(view, plugged("way-1.a", "socket-1.x"))).toBeUndefined();
    const places = spurScenario.plan.places.filter(({ station }) => station !== stationId("socket-1"));
    const unplaced = attempt({ scenario: { ...spurScenario, plan: { ...spurScenario.plan, places } } });
    expect(withComing({ ...view, attempt: unplaced }, plugged("way-1.a", "socket-1.a"))).toBeUndefined();
  });
});

describe("what is sent from the page", () => {
  const view = bench({ attempt: attempt(), board: workshopFace });
  const cable = plugged("way-1.a", "socket-1.a");

  /** A link whose answers a check gives, and what is foreseen: the ids of its cables. */
  const linked = () => {
    const foreseen: (string[] | undefined)[] = [];
    const answers: ((answer: Reply) => void)[] = [];
    const send = foreseeing({
      send: () => new Promise((answer) => answers.push(answer)),
      view: () => view,
      foresee: (work) => foreseen.push(work?.cables.map(({ id }) => id)),
    });
    return { send, foreseen, answers };
  };
  const refused: Reply = { ok: false, code: "no-board", facts: {} };

  it("is on its way before the cable is worked out, and the answer is given on", async () => {
    const order: string[] = [];
    const send = foreseeing({
      send: async () => {
        order.push("sent");
        return refused;
      },
      view: () => view,
      foresee: (work) => order.push(work ? "foreseen" : "not foreseen"),
    });
    expect(await send("plug-cable", cable)).toEqual(refused);
    expect(order).toEqual(["sent", "foreseen", "not foreseen"]);
  });

  it("is foreseen until something else is asked for, and also where that is refused later", async () => {
    const { send, foreseen, answers } = linked();
    const first = send("plug-cable", cable);
    const second = send("plug-cable", plugged("socket-1.b", "socket-2.a"));
    answers[0]?.(refused);
    await first;
    expect(foreseen).toEqual([["socket-1.a~way-1.a"], ["socket-1.b~socket-2.a"]]);
    answers[1]?.({ ok: true });
    await second;
    void send("undo", {});
    expect(foreseen.at(-1)).toBeUndefined();
    expect(foreseen).toHaveLength(3);
  });
});
