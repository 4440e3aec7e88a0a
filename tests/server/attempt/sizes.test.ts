import { describe, expect, it } from "vitest";
import { TestBench } from "../test-bench.ts";

const cable = "socket-1.a~way-1.a" as never;
const codes = [
  { code: 1, csaMm2: 2.5, cores: ["brown", "blue", "earth"] as ("brown" | "blue" | "earth")[] },
  { code: 2, csaMm2: 1.5, cores: ["brown", "blue", "earth"] as ("brown" | "blue" | "earth")[] },
];

const wholeCable = { in: ["L", "N", "E"].map((role) => `socket-1.a.${role}~way-1.a.${role}` as never) };
const wholeCableOut = { out: wholeCable.in };

describe("a cable whose plug says nothing", () => {
  it("is asked about, and is the size that is declared", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    bench.port.byHand(wholeCable);
    expect(bench.attempt().cables).toMatchObject([{ asksSize: {} }]);
    expect(bench.attempt().say).toEqual({ key: "say.size", facts: { cable } });
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 2.5 });
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5 }]);
    expect(bench.attempt().cables[0]?.asksSize).toBeUndefined();
  });

  it("keeps its size when it is out for less than two seconds", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    bench.port.byHand(wholeCable);
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 2.5 });
    bench.port.byHand(wholeCableOut);
    bench.clock.advance(1999);
    bench.port.byHand(wholeCable);
    bench.clock.advance(10_000);
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5 }]);
  });

  it("loses it after two seconds, in the log too; plugged again, the old size is offered", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    bench.port.byHand(wholeCable);
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 2.5 });
    bench.port.byHand(wholeCableOut);
    bench.clock.advance(2000);
    bench.port.byHand(wholeCable);
    expect(bench.attempt().cables).toMatchObject([{ asksSize: { offeredCsaMm2: 2.5 } }]);
    bench.clock.advance(250);
    expect(bench.events("setting").map(({ content }) => [content["value"], content["by"]])).toEqual([
      [2.5, "learner"],
      [null, "sensed"],
    ]);
  });

  it.each(["pulled alone", "cleared away with all"])(
    "comes back with its size when undo brings it back, however long it was out: %s",
    async (how) => {
      const bench = await (await new TestBench().start()).isWiring();
      await bench.cable("way-1.a", "socket-1.a", 2.5);
      await bench.does("pull", how === "pulled alone" ? { what: "cable", cable } : { what: "all" });
      bench.clock.advance(10_000);
      expect(bench.events("setting").at(-1)?.content).toMatchObject({ value: null });
      await bench.does("undo", {});
      expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5 }]);
      expect(bench.attempt().cables[0]?.asksSize).toBeUndefined();
    },
  );

  it("has the size it was changed to last when undo brings it back", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 1.5 });
    await bench.does("pull", { what: "cable", cable });
    bench.clock.advance(10_000);
    await bench.does("undo", {});
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 1.5 }]);
  });

  it("cannot be a size that is not among the parts, nor a cable that is not in", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    expect(await bench.refusal("declare", { subject: cable, key: "csaMm2", value: 2.5 })).toBe(
      "not-a-choice",
    );
    bench.port.byHand(wholeCable);
    expect(await bench.refusal("declare", { subject: cable, key: "csaMm2", value: 95 })).toBe("not-a-choice");
    expect(await bench.refusal("declare", { subject: cable, key: "fuseRatingA", value: 13 })).toBe(
      "not-a-choice",
    );
  });
});

describe("a cable whose plug has a code", () => {
  it("is the size of the code, whatever is declared; the clash is shown", async () => {
    const bench = await (await new TestBench({ codes }).start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5 }]);
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 1.5 });
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 2.5 }]);
    expect(bench.view().banners).toContainEqual({
      kind: "setting-clash",
      facts: { subject: cable, key: "csaMm2", used: 2.5 },
    });
  });

  it("of a size the board has no plug for cannot be taken from the tray", async () => {
    const bench = await (await new TestBench({ codes: codes.slice(0, 1) }).start()).isWiring();
    expect(
      await bench.refusal("plug-cable", {
        entryA: "way-1.a" as never,
        entryB: "socket-1.a" as never,
        csaMm2: 1.5,
      }),
    ).toBe("unknown-code");
  });
});

describe("undo", () => {
  it("takes back a cable, a pull, a clearing and a size, last first, and then has nothing left", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    await bench.does("pull", {
      what: "lead",
      contactA: "way-1.a.N" as never,
      contactB: "socket-1.a.N" as never,
    });
    await bench.does("declare", { subject: cable, key: "csaMm2", value: 1.5 });
    await bench.does("pull", { what: "all" });
    expect(bench.attempt().cables).toEqual([]);
    await bench.does("undo", {});
    expect(bench.attempt().cables.map(({ conductors }) => conductors.length)).toEqual([2, 3]);
    await bench.does("undo", {});
    expect(bench.attempt().cables[0]).toMatchObject({ csaMm2: 2.5 });
    await bench.does("undo", {});
    expect(bench.attempt().cables.map(({ conductors }) => conductors.length)).toEqual([3, 3]);
    await bench.does("undo", {});
    await bench.does("undo", {});
    expect(bench.attempt()).toMatchObject({ cables: [], canUndo: false });
    expect(await bench.refusal("undo", {})).toBe("nothing-to-undo");
  });

  it("puts a coded cable back with its code", async () => {
    const bench = await (await new TestBench({ codes }).start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 1.5);
    await bench.does("pull", { what: "cable", cable });
    await bench.does("undo", {});
    expect(bench.attempt().cables).toMatchObject([{ csaMm2: 1.5 }]);
  });
});

describe("a real board", () => {
  it("is wired by hand: the screen plugs and pulls nothing on it", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    bench.port.byHand(wholeCable);
    expect(await bench.refusal("pull", { what: "all" })).toBe("real-board");
    expect(
      await bench.refusal("plug", { contactA: "way-1.b.L" as never, contactB: "socket-2.a.L" as never }),
    ).toBe("real-board");
    expect(await bench.refusal("match-as-found", {})).toBe("real-board");
    expect(bench.port.requests).toEqual([]);
    expect(bench.attempt().cables).toHaveLength(1);
  });
});
