import { request as httpRequest } from "node:http";
import { describe, expect, it } from "vitest";
import { replayed } from "../../../server/desk/desk-record.ts";
import { MomentWalk, momentsOf } from "../../../server/desk/moments.ts";
import { exportPath } from "../../../server/evidence/evidence-routes.ts";
import { allExports } from "../../../server/evidence/exports.ts";
import type { AttemptView } from "../../../shared/protocol/bench-view.ts";
import type { DeskList, DeskLive, DeskRecord } from "../../../shared/protocol/desk-view.ts";
import { staffRoles } from "../../../shared/protocol/author.ts";
import { expectAsRebuilt } from "../store/table-of-attempts.ts";
import { leadsOf, rightCables, TestBench } from "../test-bench.ts";
import { testServer } from "../test-server.ts";
import { answers, byStaff, clearBoard, handIn } from "./assessed-work.ts";

const get = (url: string): Promise<{ status: number; body: string }> =>
  new Promise((resolve, reject) => {
    httpRequest(url, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString("utf8")));
      response.on("end", () => resolve({ status: response.statusCode ?? 0, body }));
    })
      .on("error", reject)
      .end();
  });

async function data<Of>(url: string): Promise<Of> {
  const { status, body } = await get(url);
  if (status !== 200) throw new Error(`${status} ${body}`);
  return JSON.parse(body) as Of;
}

const unlock = (bench: TestBench, role: string) =>
  bench.does("sign-in", { by: "badge", badge: `SPURWISE-DEMO-${role.toUpperCase()}` });

/** A server on which one attempt was handed in, with an assessor at its own screen. */
async function withWork() {
  const { bench, url } = await testServer();
  const id = await handIn(bench);
  await bench.does("sign-out", {});
  await unlock(bench, "assessor");
  return { bench, id, url: `${url}/desk-data` };
}

describe("what the desk shows", () => {
  it("is for a trainer, an assessor and a verifier, and for nobody else", async () => {
    const { bench, url } = await testServer();
    const id = await handIn(bench);
    await bench.does("sign-out", {});
    const paths = ["live", "attempts", `attempts/${id}`, `attempts/${id}/moments/3`];
    const statuses = async () =>
      Promise.all(paths.map(async (path) => (await get(`${url}/desk-data/${path}`)).status));
    expect(await statuses()).toEqual([401, 401, 401, 401]);
    for (const role of staffRoles) {
      await unlock(bench, role);
      const status = role === "technician" ? 403 : 200;
      expect(await statuses(), role).toEqual([status, status, status, status]);
      await bench.does("sign-out", {});
    }
  });

  it("is not there where there is no such attempt, moment or list", async () => {
    const { url, id } = await withWork();
    const status = async (path: string) => (await get(`${url}/${path}`)).status;
    expect(await status("attempts/nobody")).toBe(404);
    expect(await status(`attempts/nobody/moments/1`)).toBe(404);
    expect(await status(`attempts/${id}/moments/x`)).toBe(404);
    for (const query of ["mode=x", "from=yesterday", "from=2026-13-45", "learner=", "sideways=1"])
      expect(await status(`attempts?${query}`), query).toBe(400);
  });
});

describe("the list of attempts", () => {
  it("is found by learner, task, mode, day and outcome", async () => {
    const { bench, url, id } = await withWork();
    await bench.does("sign-out", {});
    clearBoard(bench);
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-03" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    const other = bench.attempt().id;
    await bench.does("sign-out", {});
    await unlock(bench, "assessor");
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    const ids = async (query: string) =>
      (await data<DeskList>(`${url}/attempts?${query}`)).attempts.map((row) => row.id);
    expect(await ids("")).toEqual([other, id]);
    const today = new Date(bench.clock.wallMs()).toISOString().slice(0, 10);
    const cases: [string, string[]][] = [
      ["learner=bryony", [id]],
      ["learner=zz", []],
      ["scenario=first-spur", [other, id]],
      ["scenario=another", []],
      ["mode=practice", [other]],
      ["status=handed-in", [id]],
      ["decision=not-yet", [id]],
      ["decision=none", [other]],
      [`from=${today}&to=${today}`, [other, id]],
      ["to=2001-01-01", []],
      ["learner=c&mode=assessed&decision=not-yet", [id]],
    ];
    for (const [query, found] of cases) expect(await ids(query), query).toEqual(found);
    const { attempts } = await data<DeskList>(`${url}/attempts?mode=assessed`);
    expect(attempts).toMatchObject([
      { learner: "Bryony Cole", proposal: "not-yet", decision: "not-yet", isSealed: false },
    ]);
  });
});

describe("the replay of an attempt", () => {
  it("has each moment with what is wrong after it, so that the one where a core was left out is found", async () => {
    const { url, id } = await withWork();
    const record = await data<DeskRecord>(`${url}/attempts/${id}`);
    const last = record.moments.at(-1);
    expect(last).toMatchObject({
      type: "handed-in",
      findings: [expect.stringContaining("ring-open") as string],
    });
    const first = record.moments.find(({ findings }) => findings.some((one) => one === last?.findings[0]));
    const before = record.moments[record.moments.indexOf(first ?? record.moments[0]!) - 1];
    expect(first?.isChange).toBe(true);
    const coresAt = async (at: number | undefined) => {
      const view = await data<AttemptView>(`${url}/attempts/${id}/moments/${at}`);
      const cable = view.cables.find((one) => one.id === "socket-1.b~socket-2.a");
      return cable?.conductors.length;
    };
    expect([await coresAt(before?.at), await coresAt(first?.at)]).toEqual([3, 2]);
  });

  it("says the findings in the language that is asked for, with all figures, also of assessed work", async () => {
    const { url, id } = await withWork();
    const { moments } = await data<DeskRecord>(`${url}/attempts/${id}`);
    const at = moments.at(-1)?.at;
    const view = (language: string) =>
      data<AttemptView>(`${url}/attempts/${id}/moments/${at}?language=${language}`);
    const [en, pl] = [await view("en"), await view("pl")];
    expect(en.verdict?.findings).toHaveLength(1);
    expect(en.verdict?.findings[0]?.title).not.toBe(pl.verdict?.findings[0]?.title);
    expect(en.cables.every(({ lengthM }) => lengthM !== undefined)).toBe(true);
  });
});

describe("the moments of an attempt", () => {
  it("go on from what is known: no moment is judged twice, and they are what a fresh walk finds", async () => {
    const { bench, id } = await withWork();
    const { records } = bench.parts;
    const found = replayed(bench.bench.core, id);
    if (!found || !records) throw new Error("no attempt");
    let judgedCount = 0;
    const judge: typeof found.parts.judge = (wiring) => {
      judgedCount += 1;
      return found.parts.judge(wiring);
    };
    const parts = { ...found.parts, judge };
    const some = found.rows.slice(0, -1);
    const of = async (rows: typeof found.rows) => [...(await momentsOf(records.logReader, parts, id, rows))];
    expect(await of(some)).toHaveLength(some.length);
    const before = judgedCount;
    expect(await of(some)).toHaveLength(some.length);
    expect(judgedCount).toBe(before);
    const all = await Promise.all([of(found.rows), of(found.rows)]);
    // The last row is the hand-in.
    expect(judgedCount).toBe(before + 1);
    const walk = new MomentWalk(found.parts, id);
    for (const row of found.rows) walk.take(row);
    expect(all).toEqual([walk.moments, walk.moments]);
  });
});

describe("an attempt that is to be seen blind", () => {
  /** Decided on by the assessor; a verifier sits at the bench's own screen. */
  async function decided() {
    const { bench, url, id } = await withWork();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    await bench.does("sign-out", {});
    await unlock(bench, "verifier");
    const viewed = () => byStaff(bench, "verifier", "view-second", { attempt: id, criteria: answers() });
    return { bench, url, id, viewed };
  }

  it("is not after a start of the bench either, for whoever was shown it before; it is on record, once, with who looked", async () => {
    const { bench, url, id } = await decided();
    for (const _again of [1, 2]) await data<DeskRecord>(`${url}/attempts/${id}`);
    expect(bench.events("decision-shown")).toMatchObject([
      { author: { by: "verifier" }, content: { person: "demo-verifier" } },
    ]);
    const record = () => bench.parts.records?.attempts.byId(id);
    expect(record()?.lastWallMs).toBe(record()?.decidedWallMs);
    expectAsRebuilt(bench.writing);
    bench.cutPower();
    const again = await new TestBench({ folder: bench.folder }).start();
    const view = (staff: string) =>
      byStaff(again, "verifier", "view-second", { attempt: id, criteria: answers() }, staff);
    expect(await view("demo-verifier")).toBe("not-blind");
    expect(await view("demo-other")).toBe("done");
  });

  it("is not after a start either, for whoever took everything with them", async () => {
    const { bench, url, id } = await decided();
    await get(url.replace("/desk-data", "/evidence/archive.jsonl"));
    expect(bench.events("decisions-taken")).toMatchObject([{ content: { person: "demo-verifier" } }]);
    bench.cutPower();
    const again = await new TestBench({ folder: bench.folder }).start();
    const view = { attempt: id, criteria: answers() };
    expect(await byStaff(again, "verifier", "view-second", view)).toBe("not-blind");
    expect(await byStaff(again, "verifier", "view-second", view, "demo-other")).toBe("done");
  });

  it.each(allExports)("is not any more for whoever has saved $name", async (made) => {
    const { url, id, viewed } = await decided();
    expect((await get(url.replace("/desk-data", exportPath(made).replace(":attempt", id)))).status).toBe(200);
    expect(await viewed()).toBe("not-blind");
  });

  it("still is for whoever saved a list without it, or found it in a list that does not tell how it was decided", async () => {
    const { url, viewed } = await decided();
    for (const query of ["mode=practice", "decision=none"])
      await get(`${url.replace("/desk-data", "/evidence/attempts.csv")}?${query}`);
    const list = await data<DeskList>(`${url}/attempts?sort=task&order=up`);
    expect(list.attempts).toMatchObject([{ isDecided: true, decision: null }]);
    expect(await viewed()).toBe("done");
  });

  it.each(["decision=not-yet", "sort=decision"])(
    "is not for whoever asked for a list by %s",
    async (query) => {
      const { url, viewed } = await decided();
      const list = await data<DeskList>(`${url}/attempts?${query}`);
      expect(list.attempts).toMatchObject([{ isDecided: true, decision: "not-yet" }]);
      expect(await viewed()).toBe("not-blind");
    },
  );

  it("has nothing of what was decided; who was shown it can give no second view", async () => {
    const { bench, url, id } = await withWork();
    await byStaff(bench, "assessor", "observe", {
      attempt: id,
      seen: "A core was left out.",
      observerSays: "",
      learnerSays: "",
    });
    await byStaff(bench, "assessor", "decide", {
      attempt: id,
      criteria: answers({ safe: { answer: "not-yet", reason: "Tester not proved." } }),
      says: "Come again.",
    });
    await bench.does("sign-out", {});
    await unlock(bench, "verifier");
    const blind = (await get(`${url}/attempts/${id}?blind=1`)).body;
    for (const told of ["Tester not proved", "Come again", "A core was left out"])
      expect(blind).not.toContain(told);
    expect(JSON.parse(blind)).toMatchObject({ isBlind: true, row: { decision: null } });
    expect(await byStaff(bench, "verifier", "view-second", { attempt: id, criteria: answers() })).toBe(
      "done",
    );
    expect(await data<DeskRecord>(`${url}/attempts/${id}`)).toMatchObject({
      decisions: [{ person: "Olwen Tansley", outcome: "not-yet" }],
      secondViews: [{ person: "Piotr Lasek" }],
    });
    expect(await byStaff(bench, "verifier", "view-second", { attempt: id, criteria: answers() })).toBe(
      "not-blind",
    );
  });
});

describe("what is going on at the bench", () => {
  it("is the work as it is wired with its findings, who waits for a check, and what is to be decided", async () => {
    const { bench, url } = await testServer();
    const live = () => data<DeskLive>(`${url}/desk-data/live`);
    await bench.isWiring("assessed");
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.atRest();
    await bench.does("ready", {});
    bench.clock.advance(90_000);
    await unlock(bench, "trainer");
    const found = await live();
    expect(found.work).toMatchObject({
      row: { learner: "Bryony Cole", mode: "assessed", status: "ready" },
      step: "wire",
      isWaitingForTrainer: false,
      view: { cables: [{ id: "socket-1.a~way-1.a" }], verdict: { findings: expect.any(Array) as unknown } },
    });
    expect(found.work?.view?.verdict?.findings.length).toBeGreaterThan(0);
    const [waiting] = found.waiting;
    expect(found.nowWallMs - (waiting?.readyWallMs ?? 0)).toBeGreaterThanOrEqual(90_000);
    expect(await byStaff(bench, "trainer", "end-attempt", { why: "bench-at-fault" })).toBe("done");
    expect(await live()).toMatchObject({ work: null, waiting: [], toDecide: [] });
  });

  it("has how many cables are left for the next learner, and a trainer has them pulled, never under open work", async () => {
    const { bench, url } = await testServer();
    await bench.isWiring("practice");
    for (const [from, to] of rightCables.slice(0, 2)) await bench.cable(from, to, 2.5);
    const clear = () => byStaff(bench, "trainer", "clear-board", {});
    expect(await clear()).toBe("work-not-ended");
    expect(await byStaff(bench, "trainer", "end-attempt", { why: "learner-gone" })).toBe("done");
    await bench.does("sign-out", {});
    await unlock(bench, "trainer");
    bench.atRest();
    const left = async () => (await data<DeskLive>(`${url}/desk-data/live`)).cableCount;
    expect(await left()).toBe(2);
    expect(await clear()).toBe("done");
    bench.atRest();
    expect(await left()).toBe(0);
  });

  it("is done on a real board once hands have pulled every lead, and says until then how many are in", async () => {
    const bench = await new TestBench({ isSimulated: false }).start();
    const leads = rightCables.slice(0, 2).flatMap(([from, to]) => leadsOf(from, to));
    bench.port.byHand({ in: leads });
    bench.atRest();
    const clear = () => byStaff(bench, "trainer", "clear-board", {});
    expect(await clear()).toBe("cables-left");
    bench.port.byHand({ out: leads });
    bench.atRest();
    expect(await clear()).toBe("done");
  });

  it("has what the verifier drew last", async () => {
    const { bench, url, id } = await withWork();
    await byStaff(bench, "assessor", "decide", { attempt: id, criteria: answers(), says: "" });
    await byStaff(bench, "verifier", "draw-sample", { seed: "2026-11", size: 5, risk: "all" });
    expect(await data<DeskLive>(`${url}/live`)).toMatchObject({
      toDecide: [],
      samplesBy: null,
      sample: { seed: "2026-11", person: "Piotr Lasek", candidateCount: 1, attempts: [{ id }] },
    });
    const asked = { seed: "2026-12", size: 5, risk: "all", scenario: "first-spur" } as const;
    await byStaff(bench, "verifier", "draw-sample", { ...asked, assessor: "demo-assessor" });
    await bench.does("sign-out", {});
    await unlock(bench, "verifier");
    const told = await data<DeskLive>(`${url}/live`);
    expect(told.samplesBy?.assessors).toContainEqual({ id: "demo-assessor", name: "Olwen Tansley" });
    expect(told.samplesBy?.scenarios.map((one) => one.id)).toContain("first-spur");
    expect(told.sample).toMatchObject({
      risk: "all",
      assessor: "Olwen Tansley",
      scenario: { id: "first-spur", title: { en: "The first spur" } },
    });
  });
});
