import { describe, expect, it } from "vitest";
import { LedBench, until, workshopOf } from "./led-bench.ts";

const trainerOfLead = { author: { by: "trainer", session: "s-1" } };

describe("a lead", () => {
  it("sees how each bench is: who works at what, at which step, what is plugged, since when they wait", async () => {
    const { lead, benches } = await workshopOf(3);
    const [first, second, third] = benches as [LedBench, LedBench, LedBench];
    await first.bench.isWiring();
    await first.bench.cable("way-1.a", "socket-1.a", 2.5);
    await second.bench.isWiring("assessed");
    await second.bench.does("ready", {});
    third.bench.clock.clockState = "unsynced";
    third.bench.port.breaks("socket-1.a.L" as never, "stuck-low");
    third.bench.atRest();
    await until(
      () =>
        lead.reportOf(first)?.picture?.cables.length === 1 &&
        lead.reportOf(second)?.work?.readyWallMs &&
        lead.reportOf(third)?.faults.length,
      "what each does",
    );
    expect(lead.reportOf(first)).toMatchObject({
      state: "ready",
      records: "sound",
      person: first.bench.view().person?.name,
      work: {
        mode: "practice",
        step: "wire",
        readyWallMs: null,
        title: { en: expect.any(String) as string },
      },
      picture: { cables: [{ id: "socket-1.a~way-1.a", csaMm2: 2.5 }] },
      face: { id: "test-small" },
    });
    expect(lead.reportOf(second)?.work).toMatchObject({ mode: "assessed", isWaitingForTrainer: false });
    expect(lead.reportOf(third)).toMatchObject({
      clock: "unsynced",
      work: null,
      picture: null,
      person: null,
    });
    await first.bench.does("pull", { what: "cable", cable: "socket-1.a~way-1.a" as never });
    await until(() => lead.reportOf(first)?.picture?.cables.length === 0, "the empty plan");
  });

  it("freezes all and lets them go on; each bench has in its own log who did it", async () => {
    const { lead, benches } = await workshopOf(2);
    await benches[0]?.bench.isWiring();
    expect(await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: true })).toEqual({ ok: true });
    for (const { bench } of benches) {
      expect(bench.view().banners[0]?.kind).toBe("frozen");
      expect(bench.events("bench-frozen")).toEqual([
        { type: "bench-frozen", ...trainerOfLead, content: { person: "t-1" } },
      ]);
    }
    expect(
      await benches[0]?.bench.refusal("plug-cable", { entryA: "way-1.a", entryB: "socket-1.a" } as never),
    ).toBe("bench-frozen");
    expect(await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: false })).toEqual({ ok: true });
    await benches[0]?.bench.cable("way-1.a", "socket-1.a");
  });

  it("freezes a bench that comes while all are frozen, and lets one go on that was away when they were let go", async () => {
    const { lead, benches } = await workshopOf(1);
    const [bench] = benches as [LedBench];
    await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: true });
    bench.cutPower();
    const again = await new LedBench({ folder: bench.bench.folder }).start();
    await until(() => again.bench.bench.core.hold.isFrozen, "the frost");
    again.link.stop();
    await until(() => lead.workshop.benches()[0]?.isLinked === false, "the end of the link");
    expect(await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: false })).toEqual({ ok: true });
    again.cutPower();
    const third = await new LedBench({ folder: bench.bench.folder }).start();
    await until(() => lead.reportOf(third)?.isFrozen === false, "the thaw");
  });

  it("gives one bench more time, and nobody else", async () => {
    const { lead, benches } = await workshopOf(2);
    const [first, second] = benches as [LedBench, LedBench];
    await lead.byTrainer("lead-order", { what: "time-all", minutes: 30 });
    await lead.byTrainer("lead-order", { what: "more-time", bench: first.id, minutes: 5 });
    expect(first.bench.bench.core.hold.leftMs).toBe(35 * 60_000);
    expect(second.bench.bench.core.hold.leftMs).toBe(30 * 60_000);
    expect(first.bench.events("time-set").map(({ author, content }) => ({ author, content }))).toEqual([
      { ...trainerOfLead, content: { what: "set", minutes: 30, person: "t-1" } },
      { ...trainerOfLead, content: { what: "more", minutes: 5, person: "t-1" } },
    ]);
    await until(() => lead.reportOf(first)?.timeUpWallMs, "the time");
    await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: true });
    await until(() => lead.reportOf(first)?.heldTimeMs === 35 * 60_000, "the time that stands still");
    expect(lead.reportOf(first)?.timeUpWallMs).toBeNull();
  });

  it("makes benches ready for the next group, and says which would not", async () => {
    const { lead, benches } = await workshopOf(2);
    const [first, second] = benches as [LedBench, LedBench];
    await first.bench.isWiring();
    await second.bench.isWiring("assessed");
    expect(await lead.byTrainer("lead-order", { what: "reset-all" })).toEqual({
      ok: false,
      code: "not-all-benches",
      facts: { doneCount: 1, count: 2 },
    });
    expect(first.bench.view()).toMatchObject({ person: null, attempt: null });
    expect(second.bench.attempt().status).toBe("open");
    const refused = lead.workshop.benches().flatMap((one) => (one.refused ? [[one.id, one.refused]] : []));
    expect(refused).toEqual([[second.id, "others-work-open"]]);
  });

  it("shows one picture to the others, and never assessed work", async () => {
    const { lead, benches } = await workshopOf(2);
    const [first, second] = benches as [LedBench, LedBench];
    expect(await lead.byTrainer("lead-order", { what: "project", bench: first.id })).toMatchObject({
      code: "no-picture",
    });
    await first.bench.isWiring();
    await second.bench.isWiring("assessed");
    await until(() => lead.reportOf(first)?.picture && lead.reportOf(second)?.picture, "the pictures");
    expect(await lead.byTrainer("lead-order", { what: "project", bench: second.id })).toMatchObject({
      code: "no-picture",
    });
    expect(await lead.byTrainer("lead-order", { what: "project", bench: first.id })).toEqual({ ok: true });
    expect(lead.workshop.projected).toBe(first.id);
    await first.bench.does("leave-attempt", {});
    await until(() => lead.workshop.projected === null, "the end of the picture");
  });
});

describe("without its lead", () => {
  it("a bench goes on, and a frozen one thaws once nothing was heard from the lead for twenty seconds", async () => {
    const { lead, benches } = await workshopOf(1);
    const [bench] = benches as [LedBench];
    await bench.bench.isWiring();
    await lead.byTrainer("lead-order", { what: "freeze-all", isFrozen: true });
    lead.workshop.stop();
    await until(() => bench.link.lead?.isLinked === false, "the end of the link");
    expect(bench.bench.bench.core.hold.isFrozen).toBe(true);
    bench.bench.clock.advance(19_000);
    expect(bench.bench.bench.core.hold.isFrozen).toBe(true);
    bench.bench.clock.advance(1_000);
    expect(bench.bench.bench.core.hold.isFrozen).toBe(false);
    expect(bench.bench.events("bench-thawed")).toEqual([
      { type: "bench-thawed", author: { by: "bench", session: null }, content: { why: "lead-lost" } },
    ]);
    await bench.bench.cable("way-1.a", "socket-1.a");
    expect(bench.bench.attempt().cables).toHaveLength(1);
  });
});
