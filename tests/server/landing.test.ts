import { describe, expect, it } from "vitest";
import type { ContactId, EntryId } from "../../shared/board/ids.ts";
import type { ActMessage } from "../../shared/protocol/acts.ts";
import { TestBench, type TestBenchOptions } from "./test-bench.ts";

const cable = { entryA: "way-1.a" as EntryId, entryB: "socket-1.a" as EntryId };
const codes = [{ code: 1, csaMm2: 2.5, cores: ["brown", "blue", "earth"] as ("brown" | "blue" | "earth")[] }];

/** How many cores of the first cable each view shows that is published from now on, with its size. */
const watched = (bench: TestBench): string[] => {
  const seen: string[] = [];
  bench.bench.core.onPublish(() => {
    const [first] = bench.attempt().cables;
    seen.push(`${first?.conductors.length ?? 0} of ${first?.csaMm2 ?? "?"} mm²`);
  });
  return seen;
};

const wired = async (options?: TestBenchOptions): Promise<TestBench> =>
  (await new TestBench(options).start()).isWiring();

const plug = (bench: TestBench, message: ActMessage<"plug-cable"> = cable) =>
  bench.bench.handle("plug-cable", message, bench.bench.core.session);

describe("a cable that is plugged on the screen", () => {
  it("is shown once its pins are in, and in one piece", async () => {
    const bench = await wired();
    const seen = watched(bench);
    expect(await plug(bench, { ...cable, csaMm2: 2.5 })).toEqual({ ok: true });
    bench.clock.advance(19);
    expect(seen).toEqual([]);
    bench.clock.advance(5);
    expect(new Set(seen)).toEqual(new Set(["3 of 2.5 mm²"]));
  });

  it("is shown with the size that its plug says", async () => {
    const bench = await wired({ codes });
    const seen = watched(bench);
    await plug(bench, { ...cable, csaMm2: 2.5 });
    bench.clock.advance(29);
    expect(seen).toEqual([]);
    bench.clock.advance(71);
    expect(new Set(seen)).toEqual(new Set(["3 of 2.5 mm²"]));
  });

  it("is shown as far as it is in a tenth of a second later where a pin makes no contact", async () => {
    const bench = await wired();
    bench.port.breaks("socket-1.a.N" as ContactId, "dead-input");
    bench.port.breaks("way-1.a.N" as ContactId, "dead-input");
    bench.clock.advance(2000);
    const seen = watched(bench);
    await plug(bench);
    bench.clock.advance(99);
    expect(seen).toEqual([]);
    bench.clock.advance(1);
    expect(seen).toEqual(["2 of ? mm²"]);
  });

  it("keeps back what else there is to show no longer than that, and loses none of it", async () => {
    const bench = await wired();
    await plug(bench);
    const seen = watched(bench);
    const before = bench.bench.core.revision;
    bench.bench.core.publish();
    expect(bench.bench.core.revision).toBe(before + 1);
    expect(seen).toEqual([]);
    bench.clock.advance(100);
    expect(seen.length).toBeGreaterThan(0);
    const { length } = seen;
    bench.bench.core.publish();
    expect(seen).toHaveLength(length + 1);
  });

  it("keeps nothing back where the board refuses it", async () => {
    const bench = await wired();
    const seen = watched(bench);
    bench.port.request = async () => {
      bench.bench.core.publish();
      expect(seen).toEqual([]);
      return { ok: false, code: "no-board", facts: {} };
    };
    expect(await plug(bench)).toMatchObject({ ok: false, code: "no-board" });
    expect(seen).toEqual(["0 of ? mm²"]);
    bench.bench.core.publish();
    expect(seen).toHaveLength(2);
  });

  it.each([
    ["undo", {}],
    ["pull", { what: "all" }],
  ] as const)("is not waited for any more once it is out again, by %s", async (name, command) => {
    const bench = await wired();
    await plug(bench);
    bench.clock.advance(5);
    const seen = watched(bench);
    expect(await bench.bench.handle(name, command as never, bench.bench.core.session)).toEqual({ ok: true });
    bench.clock.advance(0);
    expect(seen.at(-1)).toBe("0 of ? mm²");
  });

  it("is shown with the next one where that is plugged at once, both in one piece", async () => {
    const bench = await wired();
    const seen: number[][] = [];
    bench.bench.core.onPublish(() =>
      seen.push(bench.attempt().cables.map(({ conductors }) => conductors.length)),
    );
    await plug(bench);
    bench.clock.advance(15);
    await plug(bench, { entryA: "socket-1.b" as EntryId, entryB: "socket-2.a" as EntryId });
    bench.clock.advance(100);
    expect(new Set(seen.map(String))).toEqual(new Set(["3,3"]));
  });
});

describe("a lead that is plugged on the screen", () => {
  it("is shown once it is sensed, and nothing before it", async () => {
    const bench = await wired();
    bench.port.exchangeMs = 1;
    const seen = watched(bench);
    const lead = { contactA: "way-1.a.L", contactB: "socket-1.a.L" } as ActMessage<"plug">;
    expect(await bench.bench.handle("plug", lead, bench.bench.core.session)).toEqual({ ok: true });
    expect(bench.attempt().cables).toEqual([]);
    expect(seen).toEqual([]);
    bench.clock.advance(50);
    expect(new Set(seen)).toEqual(new Set(["1 of ? mm²"]));
  });
});
