import { describe, expect, it } from "vitest";
import { sceneNames, type ShowView } from "../../../shared/protocol/show-view.ts";
import type { ActMessage } from "../../../shared/protocol/acts.ts";
import { Show, type ShowCounts } from "../../../server/show/show.ts";
import { boardFace } from "../../../server/view/board-face.ts";
import { showViewFor } from "../../../server/view/show-view.ts";
import { nothingPlugged } from "../../../shared/wiring/plugged.ts";
import { ManualClock } from "../manual-clock.ts";
import { firstSpur, leadsOf, rightCables, TestBench, type TestBenchOptions } from "../test-bench.ts";

const nobody = { actor: { kind: "nobody", learner: null, session: null } } as const;
const second = 1000;

class ShownBench extends TestBench {
  see(): ShowView {
    return showViewFor(this.bench.core, boardFace(this.parts.board, this.parts.isSimulated));
  }

  async act(message: ActMessage<"show-act">): Promise<string> {
    const answer = await this.bench.handle("show-act", message, nobody);
    this.clock.advance(message.what === "plug-cable" ? 100 : 0);
    return answer.ok ? "done" : answer.code;
  }

  async wire([entryA, entryB]: readonly [string, string]): Promise<void> {
    expect(await this.act({ what: "plug-cable", entryA, entryB } as never)).toBe("done");
    this.atRest();
  }

  /** How many rows the log has, and how many writes the connection has made. */
  written(): { rows: number; writes: number } {
    const { changes } = this.writing.prepare("SELECT total_changes() AS changes").get() as {
      changes: number;
    };
    return { rows: this.rows().length, writes: changes };
  }
}

const shown = async (options: TestBenchOptions = {}): Promise<ShownBench> => {
  const bench = new ShownBench(options);
  await bench.start();
  return bench;
};

const challenged = async (options: TestBenchOptions = {}): Promise<ShownBench> => {
  const bench = await shown(options);
  await bench.act({ what: "touch" });
  await bench.act({ what: "begin" });
  bench.atRest();
  return bench;
};

describe("the story", () => {
  it("goes from idea to idea while a screen shows it, begins again, and stands still where none does", async () => {
    const bench = await shown();
    bench.clock.advance(60 * second);
    expect(bench.see().at).toEqual({ scene: 0, frame: 0 });
    const ended = bench.bench.core.show.watch();
    const seen = sceneNames.map(() => {
      const { at } = bench.see();
      bench.clock.advance(7 * second);
      return at;
    });
    expect(seen).toEqual(sceneNames.map((_, scene) => ({ scene, frame: 0 })));
    expect(bench.see().at).toEqual({ scene: 0, frame: 0 });
    ended();
    bench.clock.advance(60 * second);
    expect(bench.see().at).toEqual({ scene: 0, frame: 0 });
  });

  it("is the same moment on a second screen, and goes on when one of the two is shut", async () => {
    const bench = await shown();
    const { show } = bench.bench.core;
    const first = show.watch();
    bench.clock.advance(8 * second);
    show.watch();
    expect(bench.see().at.scene).toBe(1);
    first();
    first();
    bench.clock.advance(6 * second);
    expect(bench.see().at.scene).toBe(2);
  });

  it("hands over at a touch, in the language that is chosen, and comes back after 45 s without one", async () => {
    const bench = await shown();
    bench.bench.core.show.watch();
    await bench.act({ what: "touch" });
    expect(bench.see()).toMatchObject({ phase: "asked", language: "en" });
    bench.clock.advance(30 * second);
    await bench.act({ what: "speak", language: "pl" });
    bench.clock.advance(44 * second);
    expect(bench.see()).toMatchObject({ phase: "asked", language: "pl" });
    bench.clock.advance(second);
    expect(bench.see()).toMatchObject({ phase: "story", language: "en", at: { scene: 0, frame: 0 } });
  });
});

describe("the challenge", () => {
  it("is won as soon as the ring and its spur are there, whatever order they come in", async () => {
    const bench = await challenged();
    expect(bench.see()).toMatchObject({ phase: "challenge", leftMs: expect.any(Number) as number });
    for (const cable of [...rightCables].reverse()) {
      expect(bench.see().phase).toBe("challenge");
      await bench.wire(cable);
    }
    expect(bench.see()).toMatchObject({ phase: "result", result: { outcome: "won", missing: [] } });
  });

  it("is lost when the three minutes are over, and says what is not there yet", async () => {
    const bench = await challenged();
    await bench.wire(rightCables[0]!);
    for (let seconds = 0; seconds < 170; seconds += 10) {
      bench.clock.advance(10 * second);
      await bench.act({ what: "touch" });
    }
    expect(bench.see().phase).toBe("challenge");
    bench.clock.advance(10 * second);
    const { phase, result } = bench.see();
    expect([phase, result?.outcome]).toEqual(["result", "lost"]);
    expect(result?.missing.length).toBeGreaterThan(0);
  });

  it("is lost with a spur off the spur's socket outlet, in the words of the rules core", async () => {
    const bench = await challenged();
    for (const cable of rightCables.slice(0, 2)) await bench.wire(cable);
    await bench.act({ what: "finish" });
    const { result } = bench.see();
    expect(result?.outcome).toBe("lost");
    expect(result?.finding?.what).toMatch(/\w/);
  });

  it("says nothing of what is wired while somebody tries", async () => {
    const bench = await challenged();
    for (const cable of rightCables.slice(0, 3)) await bench.wire(cable);
    expect(bench.see().attempt?.verdict).toBeNull();
    expect(bench.see().attempt?.cables).toHaveLength(3);
  });

  it("clears a simulated board by itself, and waits for a real one to be cleared by hand before the time begins", async () => {
    const simulated = await challenged();
    for (const cable of rightCables) await simulated.wire(cable);
    await simulated.act({ what: "begin" });
    simulated.atRest();
    expect(simulated.see()).toMatchObject({ phase: "challenge", attempt: { cables: [] } });

    const real = await shown({ isSimulated: false });
    const leads = rightCables.flatMap(([from, to]) => leadsOf(from, to));
    real.port.byHand({ in: leads });
    real.atRest();
    await real.act({ what: "begin" });
    expect(real.see()).toMatchObject({ phase: "challenge", inCount: leads.length });
    expect(real.see().leftMs).toBeUndefined();
    real.port.byHand({ out: leads });
    real.atRest();
    expect(real.see().leftMs).toBeGreaterThan(170 * second);
    expect(await real.act({ what: "plug-cable", entryA: "way-1.a", entryB: "socket-1.a" } as never)).toBe(
      "real-board",
    );
    real.port.byHand({ in: leads });
    real.atRest();
    expect(real.see().result?.outcome).toBe("won");
  });

  it("goes back to the story when nobody has touched screen or board for 45 s; a lead that moves is somebody", async () => {
    const bench = await challenged({ isSimulated: false });
    bench.clock.advance(40 * second);
    bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
    bench.clock.advance(40 * second);
    expect(bench.see().phase).toBe("challenge");
    bench.clock.advance(6 * second);
    expect(bench.see().phase).toBe("story");
  });

  it("takes no harm from two visitors who plug and pull at once, in any order", async () => {
    const bench = await challenged({ isSimulated: false });
    const cables = rightCables.map(([from, to]) => leadsOf(from, to));
    const stray = leadsOf("socket-1.c", "socket-2.a");
    for (let turn = 0; turn < 60; turn += 1) {
      const [one, other] = [cables[turn % 4]!, cables[(turn * 7 + 2) % 4]!];
      bench.port.byHand(
        turn % 3 === 0 ? { in: one, out: other } : { in: [...other, ...stray], out: one.slice(0, 1) },
      );
      bench.clock.advance(turn % 5 === 0 ? 700 : 120);
      bench.port.byHand({ out: stray });
      expect(["challenge", "result"]).toContain(bench.see().phase);
    }
    bench.port.byHand({ in: cables.flat() });
    bench.atRest();
    if (bench.see().phase === "challenge") bench.atRest();
    expect(bench.see().result?.outcome).toBe("won");
    expect(bench.notes).toEqual([]);
  });
});

describe("a bench that is wanted for work", () => {
  it("takes no visitor while somebody's work lies on it, and their leads and log stay theirs", async () => {
    const bench = await shown();
    await bench.isWiring("assessed");
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    const before = bench.rows().length;
    for (const message of [
      { what: "touch" },
      { what: "begin" },
      { what: "pull", cable: "socket-1.a~way-1.a" },
    ] as ActMessage<"show-act">[])
      expect(await bench.act(message)).toBe("bench-in-use");
    expect(bench.see()).toMatchObject({ phase: "story", bar: "in-use" });
    expect(JSON.stringify(bench.see())).not.toMatch(/first-spur|Ashdown|socket-1\.a~way-1\.a/);
    bench.atRest();
    expect(
      bench
        .rows()
        .slice(before)
        .every(({ type }) => type === "sensed"),
    ).toBe(true);
  });

  it("has the challenge put away when somebody signs in", async () => {
    const bench = await challenged();
    await bench.does("sign-in", { by: "guest" });
    expect(bench.see()).toMatchObject({ phase: "story", bar: "in-use" });
  });

  it("takes none without its task, nor without its board", async () => {
    const other = await shown({ scenarios: [] });
    expect(await other.act({ what: "begin" })).toBe("no-fit");
    const bench = await challenged();
    await bench.port.dies();
    expect(bench.see()).toMatchObject({ phase: "story", bar: "no-board" });
  });
});

describe("a day of the show", () => {
  it("of eight hours and 160 visitors counts nine times at most, and never has more than four timers", () => {
    const clock = new ManualClock();
    const kept: ShowCounts[] = [];
    const waiting: number[] = [];
    let changes = 0;
    const show = new Show({
      timers: clock,
      nowMs: () => clock.monotonicMs(),
      speed: 1,
      isSolved: ({ joins }) => joins.length > 3,
      keepCounts: (counts) => void kept.push(counts),
      changed: () => {
        changes += 1;
        waiting.push(clock.waitingCount);
      },
    });
    const ended = [show.watch(), show.watch()];
    const leads = rightCables.flatMap(([from, to]) => leadsOf(from, to));
    for (let visitor = 0; visitor < 160; visitor += 1) {
      show.touch();
      show.begin();
      clock.advance(20 * second);
      if (visitor % 2 === 0) show.sense({ ...nothingPlugged, joins: leads }, true);
      expect(show.phase.name).toBe(visitor % 2 === 0 ? "result" : "challenge");
      clock.advance(160 * second);
      expect(show.phase.name).toBe("story");
      show.sense(nothingPlugged, true);
    }
    for (const end of ended) end();
    show.stop();
    expect(clock.monotonicMs()).toBeGreaterThan(8 * 3600 * second);
    expect(changes).toBeGreaterThan(5000);
    expect(Math.max(...waiting)).toBeLessThanOrEqual(4);
    expect(clock.waitingCount).toBe(0);
    expect(kept.length).toBeLessThanOrEqual(9);
    const sum = (what: keyof ShowCounts) => kept.reduce((all, counts) => all + counts[what], 0);
    expect([sum("begun"), sum("won"), sum("lost"), sum("left")]).toEqual([160, 80, 0, 80]);
  });

  it("leaves one row in the log for an hour of visitors, counts alone, and no other write", async () => {
    const bench = await shown({ isSimulated: false });
    bench.bench.core.show.watch();
    const before = bench.written();
    const leads = rightCables.flatMap(([from, to]) => leadsOf(from, to));
    for (let visitor = 0; visitor < 4; visitor += 1) {
      await bench.act({ what: "touch" });
      await bench.act({ what: "begin" });
      bench.atRest();
      bench.port.byHand({ in: leads });
      bench.atRest();
      expect(bench.see().result?.outcome).toBe("won");
      bench.port.byHand({ out: leads });
      bench.clock.advance(60 * second);
      expect(bench.see().phase).toBe("story");
    }
    expect(bench.written()).toEqual(before);
    await bench.bench.stop();
    const rows = bench.events().slice(before.rows);
    expect(rows).toEqual([
      {
        type: "show-counted",
        author: { by: "bench", session: null },
        content: { begun: 4, won: 4, lost: 0, left: 0 },
      },
    ]);
  });
});

it("uses a task that stays as it is: the challenge is the first spur", () => {
  expect(firstSpur().scenario.asFound.cables).toEqual([]);
});
