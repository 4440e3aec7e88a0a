import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { run as letInCommand } from "../../../server/commands/let-in.ts";
import { openRecords } from "../../../server/open-records.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import type { ActMessage, ActName } from "../../../shared/protocol/acts.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench, type TestBenchOptions } from "../test-bench.ts";

const pin = "482915";

/** A bench with a real board on which the first person is set up and signed in. */
async function setUpBench(options: TestBenchOptions = {}): Promise<TestBench> {
  const bench = await new TestBench({ hasDemo: false, ...options }).start();
  const code = bench.view().staff.firstStartCode ?? "";
  await bench.does("set-up", { code, name: "Ida Nowak", pin });
  await unlock(bench, "Ida Nowak");
  return bench;
}

const idOf = (bench: TestBench, name: string): string =>
  bench.parts.people.all().find((person) => person.name === name)?.id ?? "";

const unlock = (bench: TestBench, name: string): Promise<void> =>
  bench.does("sign-in", { by: "pin", person: idOf(bench, name), pin });

/** Runs the command that lets a technician in at the terminal; gives what it said, and the PIN in it. */
async function letIn(folder: string, name: string): Promise<{ code: number; said: string; pin: string }> {
  let said = "";
  const write = vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    said += String(text);
    return true;
  });
  vi.stubEnv("SPURWISE_DATA", folder);
  try {
    const code = await letInCommand(name === "" ? [] : name.split(" "));
    return { code, said, pin: /PIN: (\d{8})\./.exec(said)?.[1] ?? "" };
  } finally {
    write.mockRestore();
    vi.unstubAllEnvs();
  }
}

const textOf = (folder: string): string =>
  ["spurwise.db", "spurwise.db-wal"]
    .map((file) => join(folder, file))
    .filter((path) => existsSync(path))
    .map((path) => readFileSync(path, "latin1"))
    .join("");

describe("the first start", () => {
  it("has nobody on the list, no PIN and no badge that anybody could know, and shows a code that sets one person up", async () => {
    const bench = await new TestBench({ hasDemo: false }).start();
    const { staff, learners } = bench.view();
    expect({ learners, staff }).toEqual({
      learners: [],
      staff: {
        me: null,
        unlockers: [],
        firstStartCode: expect.stringMatching(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/) as string,
      },
    });
    expect(await bench.refusal("sign-in", { by: "badge", badge: "SPURWISE-DEMO-01" })).toBe("unknown-badge");
    const code = staff.firstStartCode ?? "";
    const first = { code, name: "Ida Nowak", pin };
    expect(await bench.refusal("set-up", { ...first, code: "AAAA-AAAA" })).toBe("wrong-code");
    expect(await bench.refusal("set-up", { ...first, pin: "123456" })).toBe("easy-pin");
    await bench.does("set-up", { ...first, code: code.toLowerCase().replace("-", "") });
    expect(bench.view().staff).toEqual({
      me: null,
      unlockers: [{ id: idOf(bench, "Ida Nowak"), name: "Ida Nowak", role: "technician" }],
    });
    expect(await bench.refusal("set-up", first)).toBe("set-up-already");
  });

  it("makes another code each time, and none once somebody is set up", async () => {
    const folder = temporaryFolder();
    const codeOf = async (): Promise<string | undefined> => {
      const bench = await new TestBench({ folder, hasDemo: false }).start();
      const { firstStartCode } = bench.view().staff;
      await bench.stop();
      return firstStartCode;
    };
    expect(await codeOf()).not.toBe(await codeOf());
    await (await setUpBench({ folder })).stop();
    expect(await codeOf()).toBeUndefined();
  });

  it("of a demonstration offers invented people until somebody is set up, and none of them after that", async () => {
    const folder = temporaryFolder();
    const bench = await new TestBench({ folder }).start();
    expect(bench.view().staff.isDemonstration).toBe(true);
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TECHNICIAN" });
    expect(await bench.refusal("choose-network", { isOpen: true })).toBe("demonstration");
    expect(await bench.refusal("add-person", { name: "Ida Nowak", role: "learner" })).toBe("demonstration");
    await bench.does("sign-out", {});
    const code = bench.view().staff.firstStartCode ?? "";
    await bench.does("set-up", { code, name: "Ida Nowak", pin });
    const stays = (one: TestBench) => {
      expect(one.view()).toMatchObject({ learners: [], person: null });
      expect(one.view().staff.isDemonstration).toBeUndefined();
    };
    stays(bench);
    for (const badge of ["SPURWISE-DEMO-01", "SPURWISE-DEMO-TECHNICIAN"])
      expect(await bench.refusal("sign-in", { by: "badge", badge })).toBe("unknown-badge");
    expect(await bench.refusal("sign-in", { by: "name", learner: "demo-01" })).toBe("unknown-learner");
    await bench.stop();
    stays(await new TestBench({ folder }).start());
  });
});

describe("the staff", () => {
  it("unlock with their own PIN, and the log names who it was, by what and where, never the PIN", async () => {
    const bench = await setUpBench();
    expect(bench.view()).toMatchObject({
      person: null,
      staff: { me: { name: "Ida Nowak", role: "technician" } },
    });
    const person = idOf(bench, "Ida Nowak");
    const [signedIn] = bench.events("staff-signed-in");
    expect(signedIn).toMatchObject({
      author: { by: "technician" },
      content: { person, role: "technician", with: "pin", at: "own-screen" },
    });
    await bench.does("add-person", { name: "Maud Perrin", role: "trainer", badge: "T-0815" });
    expect(bench.events("person-kept").at(-1)?.author).toEqual(signedIn?.author);
    expect(textOf(bench.folder)).not.toContain(pin);
    expect(textOf(bench.folder)).not.toContain("T-0815");
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "badge", badge: "T-0815" });
    expect(bench.view().staff.me?.role).toBe("trainer");
    expect(bench.events("staff-signed-in")).toHaveLength(2);
  });

  it("and learners whose badge was marked in the way of before are known by it, and it is marked anew", async () => {
    const folder = temporaryFolder();
    const before = await setUpBench({ folder });
    await before.does("add-person", { name: "Leo Ashdown", role: "learner", badge: "L-12" });
    const leo = idOf(before, "Leo Ashdown");
    await before.stop();
    const { people, writing, reading } = openRecords(join(folder, "spurwise.db"), () => undefined);
    const record = people?.reader.record(leo);
    expect(record).toBeDefined();
    if (record) people?.writer.markBadge(record, people.marks.before("L-12"), byBench);
    [writing, reading].forEach((database) => database.close());

    const after = await new TestBench({ folder, hasDemo: false }).start();
    await unlock(after, "Ida Nowak");
    expect(await after.refusal("add-person", { name: "Olwen Price", role: "learner", badge: "L-12" })).toBe(
      "badge-taken",
    );
    await after.does("sign-out", {});
    for (const changes of [2, 2]) {
      await after.does("sign-in", { by: "badge", badge: "L-12" });
      expect(after.view().person?.name).toBe("Leo Ashdown");
      const marked = after.events("person-kept").filter(({ content }) => content.what === "badge-marked");
      expect(marked).toHaveLength(changes);
      await after.does("sign-out", {});
    }
    expect(verifyLog(after.writing)).toMatchObject({ isSound: true });
  });

  it("who type a wrong PIN wait longer each time, and a learner at the screen is not made to wait with them", async () => {
    const bench = await setUpBench();
    await bench.does("add-person", { name: "Leo Ashdown", role: "learner", badge: "L-12" });
    await bench.does("sign-out", {});
    const person = idOf(bench, "Ida Nowak");
    const wrong = { by: "pin", person, pin: "999999" } as const;
    const seen: string[] = [];
    for (let count = 0; count < 5; count += 1) seen.push(await bench.refusal("sign-in", wrong));
    expect(seen).toEqual(["wrong-pin", "wrong-pin", "wrong-pin", "wait-to-try", "wait-to-try"]);
    expect(await bench.refusal("sign-in", { by: "pin", person, pin })).toBe("wait-to-try");
    await bench.does("sign-in", { by: "name", learner: idOf(bench, "Leo Ashdown") });
    await bench.does("sign-in", { by: "badge", badge: "L-12" });
    bench.clock.advance(1000);
    await bench.does("sign-in", { by: "pin", person, pin });
  });

  it("who typed a wrong PIN too often wait as long after a restart, and a right one at the first go writes nothing", async () => {
    const folder = temporaryFolder();
    const before = await setUpBench({ folder });
    const kept = (bench: TestBench) =>
      bench.writing.prepare("SELECT json FROM bench_memory WHERE key = 'guesses'").pluck().get();
    expect(kept(before)).toBeUndefined();
    await before.does("sign-out", {});
    const person = idOf(before, "Ida Nowak");
    const tries = async (bench: TestBench): Promise<string[]> => {
      const seen: string[] = [];
      for (let count = 0; count < 4; count += 1) {
        seen.push(await bench.refusal("sign-in", { by: "pin", person, pin: "999999" }));
        bench.clock.advance(5000);
      }
      return seen;
    };
    await tries(before);
    await before.refusal("sign-in", { by: "pin", person, pin: "999999" });
    expect(await before.refusal("sign-in", { by: "pin", person, pin })).toBe("wait-to-try");
    before.cutPower();

    const after = await new TestBench({ folder, hasDemo: false }).start();
    expect(await after.refusal("sign-in", { by: "pin", person, pin })).toBe("wait-to-try");
    after.clock.advance(16_000);
    await after.does("sign-in", { by: "pin", person, pin });
    expect(kept(after)).toBe("[]");
  });

  it("who have forgotten their PIN get another from a technician, and the old one opens nothing any more", async () => {
    const bench = await setUpBench();
    await bench.does("add-person", { name: "Maud Perrin", role: "trainer", pin: "739146" });
    const maud = idOf(bench, "Maud Perrin");
    expect(await bench.refusal("renew-pin", { person: maud, pin: "111111" })).toBe("easy-pin");
    await bench.does("renew-pin", { person: maud, pin: "640281" });
    expect(bench.events("person-kept").at(-1)).toMatchObject({
      author: { by: "technician" },
      content: { person: maud, what: "new-pin" },
    });
    await bench.does("sign-out", {});
    expect(await bench.refusal("sign-in", { by: "pin", person: maud, pin: "739146" })).toBe("wrong-pin");
    await bench.does("sign-in", { by: "pin", person: maud, pin: "640281" });
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
    await bench.does("sign-out", {});
    await unlock(bench, "Ida Nowak");
    await bench.does("add-person", { name: "Leo Ashdown", role: "learner", badge: "L-12" });
    // A learner has no PIN, and none is made for one.
    expect(await bench.refusal("renew-pin", { person: idOf(bench, "Leo Ashdown"), pin: "640281" })).toBe(
      "unknown-person",
    );
  });

  it("of whom every technician has forgotten their PIN are let in again at the terminal, and the log says so", async () => {
    const folder = temporaryFolder();
    const before = await setUpBench({ folder });
    const ida = idOf(before, "Ida Nowak");
    await before.stop();
    expect(await letIn(folder, "")).toMatchObject({ code: 2 });
    expect(await letIn(temporaryFolder(), "Ida Nowak")).toMatchObject({ code: 2 });
    const known = await letIn(folder, "Ida Nowak");
    expect(known).toMatchObject({
      code: 0,
      said: expect.stringContaining("Ida Nowak has a new PIN") as string,
    });
    const other = await letIn(folder, "Ruth Okafor");
    expect(other).toMatchObject({ code: 0, said: expect.stringContaining("is on the list now") as string });

    const after = await new TestBench({ folder, hasDemo: false }).start();
    expect(await after.refusal("sign-in", { by: "pin", person: ida, pin })).toBe("wrong-pin");
    await after.does("sign-in", { by: "pin", person: ida, pin: known.pin });
    await after.does("sign-out", {});
    await after.does("sign-in", { by: "pin", person: idOf(after, "Ruth Okafor"), pin: other.pin });
    expect(after.view().staff.me?.role).toBe("technician");
    expect(after.events("person-kept").slice(-2)).toMatchObject([
      { author: { by: "bench" }, content: { person: ida, what: "let-in" } },
      { author: { by: "bench" }, content: { what: "let-in", role: "technician" } },
    ]);
    expect(textOf(folder)).not.toContain(known.pin);
    expect(verifyLog(after.writing)).toMatchObject({ isSound: true });
  });

  it("who are technicians see at the bench who is on the list and on hold; nobody else does", async () => {
    const bench = await setUpBench();
    await bench.does("add-person", { name: "Maud Perrin", role: "trainer", pin: "739146" });
    await bench.does("add-person", { name: "Leo Ashdown", role: "learner" });
    const leo = idOf(bench, "Leo Ashdown");
    await bench.does("hold-person", { person: leo, isHeld: true });
    expect(bench.view().staff.people).toEqual({
      staff: [{ id: idOf(bench, "Maud Perrin"), name: "Maud Perrin", role: "trainer" }],
      held: [leo],
    });
    await bench.does("hold-person", { person: leo, isHeld: false });
    expect(bench.view().staff.people?.held).toEqual([]);
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "pin", person: idOf(bench, "Maud Perrin"), pin: "739146" });
    expect(bench.view().staff.people).toBeUndefined();
  });

  it("who touch nothing for three minutes are signed out by the bench itself, also over their own work", async () => {
    const bench = await setUpBench();
    bench.clock.advance(170_000);
    await bench.does("set-large", { isLarge: true });
    bench.clock.advance(170_000);
    expect(bench.view().staff.me).not.toBeNull();
    const { revision } = bench.view();
    bench.clock.advance(10_000);
    expect(bench.view().staff.me).toBeNull();
    expect(bench.view().revision).toBeGreaterThan(revision);
    expect(await bench.refusal("choose-network", { isOpen: true })).toBe("not-signed-in");
  });

  it("are not signed in any more after a restart", async () => {
    const folder = temporaryFolder();
    const before = await setUpBench({ folder });
    await before.stop();
    expect((await new TestBench({ folder, hasDemo: false }).start()).view().staff.me).toBeNull();
  });

  it.each([
    {
      what: "a trainer who adds a trainer",
      as: "trainer",
      name: "add-person",
      message: { name: "X", role: "trainer", pin },
      code: "not-for-you",
    },
    {
      what: "staff without a PIN or a badge",
      as: "technician",
      name: "add-person",
      message: { name: "X", role: "verifier" },
      code: "pin-or-badge",
    },
    {
      what: "a badge that somebody has",
      as: "technician",
      name: "add-person",
      message: { name: "X", role: "learner", badge: "T-0815" },
      code: "badge-taken",
    },
  ] as const)("are refused $what", async ({ as, name, message, code }) => {
    const bench = await setUpBench();
    await bench.does("add-person", { name: "Maud Perrin", role: "trainer", pin, badge: "T-0815" });
    await unlock(bench, as === "trainer" ? "Maud Perrin" : "Ida Nowak");
    expect(await bench.refusal(name as ActName, message as ActMessage)).toBe(code);
  });
});

describe("assessed work that a power cut left open", () => {
  async function interrupted(): Promise<TestBench> {
    const before = await (await new TestBench().start()).isWiring("assessed");
    await before.cable("way-1.a", "socket-1.a", 2.5);
    before.clock.advance(250);
    before.cutPower();
    return new TestBench({ folder: before.folder }).start();
  }

  it("goes on once a trainer has confirmed it, by its learner's own badge, and the log has who and when", async () => {
    const bench = await interrupted();
    expect(await bench.refusal("confirm-resume", {})).toBe("not-for-you");
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    expect(bench.view().staff.work).toEqual({
      name: "Bryony Cole",
      mode: "assessed",
      isWaitingForTrainer: true,
    });
    expect(bench.view().attempt).toBeNull();
    await bench.does("confirm-resume", {});
    expect(bench.events("resume-confirmed")).toMatchObject([
      { author: { by: "trainer" }, content: { person: "demo-trainer" } },
    ]);
    expect(await bench.refusal("confirm-resume", {})).toBe("nothing-to-confirm");
    expect(await bench.refusal("sign-in", { by: "name", learner: "demo-02" })).toBe("badge-needed");
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    await bench.does("hand-in", {});
    await bench.stop();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(after.attempt().status).toBe("handed-in");
  });

  it("is ended by a trainer with a reason, and the bench is free; its record says who and why", async () => {
    const bench = await interrupted();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    await bench.does("end-attempt", { why: "learner-gone" });
    expect(bench.events("attempt-left")).toMatchObject([
      {
        author: { by: "trainer" },
        content: { reason: "ended", person: "demo-trainer", why: "learner-gone" },
      },
    ]);
    expect(bench.view().staff.work).toBeUndefined();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });

  it("can be ended, and not confirmed, while the board cannot be read", async () => {
    const before = await (await new TestBench().start()).isWiring("assessed");
    before.cutPower();
    const after = new TestBench({ folder: before.folder });
    after.port.cutsChain();
    await after.start();
    await after.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    expect(after.view().staff.work).toMatchObject({ isWaitingForTrainer: true });
    expect(await after.refusal("confirm-resume", {})).toBe("no-board");
    await after.does("end-attempt", { why: "bench-at-fault" });
    after.port.cutsChain(false);
    after.atRest();
    expect(after.events("resumed")).toEqual([]);
    expect(after.view().staff.work).toBeUndefined();
  });
});

describe("a person who is erased", () => {
  async function withLearner(): Promise<{ bench: TestBench; learner: string }> {
    const bench = await setUpBench();
    await bench.does("add-person", {
      name: "Kasia Wrona",
      role: "learner",
      centreNumber: "T-011",
      badge: "L-11",
    });
    return { bench, learner: idOf(bench, "Kasia Wrona") };
  }

  it("has no name, number, badge or key any more, the chain still holds, and so does what they did", async () => {
    const { bench, learner } = await withLearner();
    await bench.does("sign-in", { by: "badge", badge: "L-11" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("leave-attempt", {});
    await unlock(bench, "Ida Nowak");
    await bench.does("erase-person", { person: learner });
    expect(bench.view().learners).toEqual([]);
    expect(await bench.refusal("sign-in", { by: "badge", badge: "L-11" })).toBe("unknown-badge");
    expect(readFileSync(join(bench.folder, "person-keys.json"), "utf8")).not.toContain(learner);
    expect(textOf(bench.folder)).not.toContain("Wrona");
    expect(bench.events("attempt-started")).toMatchObject([{ content: { learner } }]);
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
    expect(await bench.refusal("erase-person", { person: learner })).toBe("unknown-person");
  });

  it("is not one whose records are on hold, nor one at work, nor the last technician", async () => {
    const { bench, learner } = await withLearner();
    await bench.does("hold-person", { person: learner, isHeld: true });
    expect(await bench.refusal("erase-person", { person: learner })).toBe("held");
    await bench.does("hold-person", { person: learner, isHeld: false });
    await bench.does("sign-in", { by: "badge", badge: "L-11" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
    await unlock(bench, "Ida Nowak");
    expect(await bench.refusal("erase-person", { person: learner })).toBe("person-at-work");
    await bench.does("add-person", { name: "Ruth Okafor", role: "technician", pin });
    const ida = idOf(bench, "Ida Nowak");
    expect(await bench.refusal("erase-person", { person: ida })).toBe("person-at-work");
    await unlock(bench, "Ruth Okafor");
    await bench.does("erase-person", { person: ida });
    expect(
      bench.parts.people.list.erase(idOf(bench, "Ruth Okafor"), { by: "bench", session: null }),
    ).toMatchObject({
      code: "last-technician",
    });
  });

  it("is gone for good also where the power went before their key was destroyed", async () => {
    const { bench, learner } = await withLearner();
    const keys = join(bench.folder, "person-keys.json");
    const before = readFileSync(keys, "utf8");
    await bench.does("erase-person", { person: learner });
    await bench.stop();
    writeFileSync(keys, before);
    await new TestBench({ folder: bench.folder, hasDemo: false }).start();
    expect(readFileSync(keys, "utf8")).not.toContain(learner);
  });
});

describe("the list of people", () => {
  it.each([
    {
      what: "a part that was raised",
      sql: "UPDATE person SET role = 'technician' WHERE role = 'learner'",
      says: "changed",
    },
    { what: "a PIN that was put in", sql: "UPDATE person SET pin_hash = 'x'", says: "changed" },
    { what: "somebody who was taken out", sql: "DELETE FROM person WHERE role = 'learner'", says: "missing" },
    {
      what: "somebody who was put in",
      sql: "INSERT INTO person (person_id, role, added_wall_ms) VALUES ('x', 'technician', 0)",
      says: "does not tell",
    },
  ])("shows $what when it is checked", async ({ sql, says }) => {
    const bench = await setUpBench();
    await bench.does("add-person", { name: "Kasia Wrona", role: "learner" });
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
    bench.writing.exec(sql);
    expect(verifyLog(bench.writing)).toMatchObject({
      isSound: false,
      firstBadRecord: expect.stringContaining("person ") as string,
      reason: expect.stringContaining(says) as string,
    });
  });

  it("lies with its secrets in files that only the bench's own user may read", async () => {
    const bench = await setUpBench();
    for (const file of ["secrets.json", "person-keys.json"])
      expect(statSync(join(bench.folder, file)).mode & 0o777).toBe(0o600);
  });

  it.each(["secrets.json", "person-keys.json"])(
    "whose %s is gone or broken is damaged: nobody is let in by another secret, and practice goes on beside it",
    async (file) => {
      const bench = await setUpBench();
      await bench.does("add-person", { name: "Kasia Wrona", role: "learner", badge: "L-11" });
      await bench.stop();
      const path = join(bench.folder, file);
      for (const spoil of [() => rmSync(path), () => writeFileSync(path, "{")]) {
        spoil();
        const notes: string[] = [];
        const opened = openRecords(join(bench.folder, "spurwise.db"), (note) => notes.push(note));
        expect(opened).toMatchObject({ isBesideDamaged: true, people: undefined });
        expect(notes).toEqual([expect.stringContaining(path) as string]);
        opened.reading.close();
        opened.writing.close();
      }
    },
  );

  it("of a bench of before is taken over with its badges, and invented learners are not", async () => {
    const folder = temporaryFolder();
    const old = new TestBench({ folder });
    const { createHash } = await import("node:crypto");
    const put = old.writing.prepare("INSERT INTO learner VALUES (?, ?, ?, ?)");
    put.run("l-1", "Kasia Wrona", "T-011", createHash("sha256").update("L-11").digest());
    put.run("l-2", "Leo Ashdown", "T-012", null);
    put.run("demo-01", "Aleks Brandt", "T-001", createHash("sha256").update("SPURWISE-DEMO-01").digest());
    await old.stop();
    const bench = await new TestBench({ folder, hasDemo: false }).start();
    expect(bench.view().learners).toEqual([
      { id: "l-1", name: "Kasia Wrona" },
      { id: "l-2", name: "Leo Ashdown" },
    ]);
    await bench.does("sign-in", { by: "badge", badge: "L-11" });
    expect(bench.view().person?.name).toBe("Kasia Wrona");
    expect(bench.writing.prepare("SELECT count(*) FROM learner").pluck().get()).toBe(0);
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });
});
