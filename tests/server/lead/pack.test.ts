import { describe, expect, it } from "vitest";
import { join } from "node:path";
import { readFileSync } from "node:fs";
import { openPack, sealPack } from "../../../server/lead/group-pack.ts";
import { openSigner } from "../../../server/store/log-signer.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { firstSpur } from "../test-bench.ts";
import { LedBench, until, workshopOf } from "./led-bench.ts";

const by = { person: "t-1", session: "s-1" };
const secondTask = firstSpur({ id: "second-task", revision: 7 });

/** A lead with a class list, a trainer with a PIN, and a task that the benches have not got; and two benches. */
async function withClass() {
  const made = await workshopOf(2, { scenarios: [firstSpur(), secondTask] });
  const { people } = made.lead.bench.parts;
  await people.list.add({ name: "Maud Perrin", role: "trainer", pin: "482915" }, byBench);
  await people.list.addClass(
    [
      { line: 2, name: "Kasia Wrona", centreNumber: "C-7", badge: "L-11" },
      { line: 3, name: "Ewan Birt", centreNumber: "C-8", badge: undefined },
    ],
    byBench,
  );
  return made;
}

const isInForce = (bench: LedBench, version: number) => () => bench.packs.versions.version === version;

describe("the pack of a group", () => {
  it("has a class that was loaded once work at every bench: by name, by badge, by PIN, under one id", async () => {
    const { lead, benches } = await withClass();
    expect(await lead.byTrainer("lead-order", { what: "send-pack" })).toEqual({ ok: true });
    expect(lead.bench.events("pack-sent")).toMatchObject([
      { author: { by: "trainer", session: "s-1" }, content: { version: 1, person: "t-1" } },
    ]);
    const known = lead.bench.parts.people.all();
    for (const bench of benches) {
      await until(isInForce(bench, 1), "the pack");
      const { people } = bench.bench.parts;
      expect(people.all()).toEqual(known);
      expect(people.isDemonstration).toBe(false);
      expect(await people.byBadge("L-11", "here")).toMatchObject({ name: "Kasia Wrona" });
      expect(
        await people.byPin(known.find(({ role }) => role === "trainer")?.id ?? "", "482915", "here"),
      ).toMatchObject({
        name: "Maud Perrin",
      });
      expect(bench.bench.view().scenarios.map(({ id }) => id)).toEqual(["first-spur", "second-task"]);
      expect(bench.bench.events("pack-applied")).toMatchObject([
        {
          author: { by: "trainer", session: "s-1" },
          content: { lead: lead.id, version: 1, person: "t-1" },
        },
      ]);
      expect(readFileSync(join(bench.bench.folder, "criteria.json"), "utf8")).toContain('"criteria"');
    }
    // What the log of a bench says of people names nobody.
    const told = benches[0]?.bench.rows().map(({ bytes }) => Buffer.from(bytes).toString("utf8")) ?? [];
    expect(told.join("\n")).not.toContain("Kasia");
  });

  it("comes into force between two pieces of work, also where the bench was started anew meanwhile", async () => {
    const { lead, benches } = await withClass();
    const [bench] = benches as [LedBench];
    await bench.bench.isWiring();
    await lead.byTrainer("lead-order", { what: "send-pack" });
    await until(() => bench.packs.versions.waiting === 1, "the pack");
    await until(() => lead.reportOf(bench)?.waitingPackVersion === 1, "the report");
    expect(bench.bench.parts.scenarios.kits.size).toBe(1);
    bench.cutPower();
    const again = await new LedBench({ folder: bench.bench.folder }).start();
    expect(again.packs.versions).toEqual({ version: 0, waiting: 1 });
    expect(again.bench.attempt().status).toBe("open");
    await again.bench.does("leave-attempt", {});
    expect(again.packs.versions).toEqual({ version: 1, waiting: null });
    expect(again.bench.parts.scenarios.kits.size).toBe(2);
    // And it is in force after the next start.
    again.cutPower();
    const third = await new LedBench({ folder: bench.bench.folder }).start();
    expect(third.packs.versions).toEqual({ version: 1, waiting: null });
    expect(third.bench.parts.scenarios.kits.size).toBe(2);
    expect(await third.bench.parts.people.byBadge("L-11", "here")).toMatchObject({ name: "Kasia Wrona" });
  });

  it("goes to a bench that comes later; a newer one takes its place, and who was erased at the lead is erased there", async () => {
    const { lead, benches } = await withClass();
    const [bench] = benches as [LedBench];
    bench.link.stop();
    await until(() => lead.workshop.benches().some(({ isLinked }) => !isLinked), "the end of the link");
    await lead.byTrainer("lead-order", { what: "send-pack" });
    bench.cutPower();
    const again = await new LedBench({ folder: bench.bench.folder }).start();
    await until(isInForce(again, 1), "the pack");
    const { people } = lead.bench.parts;
    const ewan = people.list.learners().find(({ name }) => name === "Ewan Birt")?.id ?? "";
    people.list.erase(ewan, byBench);
    await lead.byTrainer("lead-order", { what: "send-pack" });
    await until(isInForce(again, 2), "the second pack");
    expect(again.bench.parts.people.all().map(({ name }) => name)).toEqual(["Kasia Wrona", "Maud Perrin"]);
    // Nothing is written of who is as before.
    expect(again.bench.events("person-kept").map(({ content }) => content["what"])).toEqual([
      "from-lead",
      "from-lead",
      "from-lead",
      "erased",
    ]);
  });

  it("is none where the lead has not signed it, where a byte is another, or where it is older", async () => {
    const { lead, benches } = await withClass();
    const [bench] = benches as [LedBench];
    const first = lead.packs.make(lead.bench.bench.core, by);
    const second = lead.packs.make(lead.bench.bench.core, by);
    const { core } = bench.bench.bench;
    const known = bench.book.lead;
    if (!known) throw new Error("not paired");
    const other = sealPack(first.pack, openSigner(temporaryFolder()));
    bench.packs.take(core, other, known);
    const bytes = Buffer.from(first.sealed.bytes, "base64");
    bytes[bytes.length - 2] = 32;
    bench.packs.take(core, { ...first.sealed, bytes: bytes.toString("base64") }, known);
    expect(bench.packs.versions).toEqual({ version: 0, waiting: null });
    expect(bench.bench.notes.filter((note) => note.includes("has not signed"))).toHaveLength(2);
    bench.packs.take(core, second.sealed, known);
    bench.packs.take(core, first.sealed, known);
    expect(bench.packs.versions).toEqual({ version: 2, waiting: null });
    expect(openPack(second.sealed, known.publicKey)?.pack.version).toBe(2);
  });
});
