import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ScenarioShelf } from "../../../server/author/scenario-shelf.ts";
import type { ScenarioKit } from "../../../server/library.ts";
import type { DraftView, PrepareView, WiredView } from "../../../shared/protocol/author-view.ts";
import { entryId, type EntryId, stationId } from "../../../shared/board/ids.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { testServer } from "../test-server.ts";

const pin = "482915";
const shipped = JSON.parse(
  readFileSync(join(import.meta.dirname, "../../../scenarios/first-spur.json"), "utf8"),
) as Scenario;
const cables = (...ends: (readonly [EntryId, EntryId])[]): Built => ({
  cables: ends.map(([from, to]) => ({ from, to, csaMm2: 2.5 })),
});
const end = (station: string, letter: string): EntryId => entryId(stationId(station), letter);
const out = [end("way-1", "a"), end("socket-1", "a")] as const;
const between = [end("socket-1", "b"), end("socket-2", "a")] as const;

/** A ring of two in a shipped house: the bench is to write the task and what wrong answers are told. */
const own: Scenario = {
  ...shipped,
  id: "own-first-spur",
  requirements: [
    {
      kind: "one-circuit",
      stations: [stationId("socket-1"), stationId("socket-2")],
      way: stationId("way-1"),
    },
    { kind: "shape", of: stationId("way-1"), shape: "ring" },
    { kind: "in-ring", stations: [stationId("socket-1"), stationId("socket-2")] },
  ],
  asks: [],
  loads: [],
  modelAnswers: [cables(out, between, [end("socket-2", "b"), end("way-1", "b")])],
  wrongAnswers: [
    { name: "the ring does not come back", built: cables(out, between), findings: [] },
    {
      name: "socket outlet 2 is on a spur",
      built: cables(
        out,
        [end("socket-1", "b"), end("way-1", "b")],
        [end("socket-1", "c"), end("socket-2", "a")],
      ),
      findings: [],
    },
  ],
};

/** A bench with a trainer, or another, at its own screen. */
async function bench(role: "trainer" | "assessor" = "trainer") {
  const made = await testServer({ hasDemo: false });
  const { people } = made.bench.parts;
  await people.list.add({ name: "Maud Perrin", role, pin }, { by: "bench", session: null });
  const me = people.unlockers()[0]?.id ?? "";
  await made.bench.does("sign-in", { by: "pin", person: me, pin });
  const url = `${made.url}/keep-data/prepare`;
  const post = async (path: string, body: unknown, origin: string | undefined = made.url) => {
    const answer = await fetch(`${url}${path}`, {
      method: "POST",
      headers: origin ? { origin } : {},
      body: typeof body === "string" ? body : JSON.stringify(body),
    });
    const text = await answer.text();
    const isJson = answer.headers.get("content-type")?.includes("json") === true;
    return {
      status: answer.status,
      text,
      view: (isJson ? JSON.parse(text) : {}) as DraftView & { faults?: { line: number }[] },
    };
  };
  const list = async () => (await (await fetch(url)).json()) as PrepareView;
  return { ...made, url, post, list, kits: () => made.bench.parts.scenarios.kits };
}

describe("what the bench says of a task that is being made", () => {
  it("writes the task from what is asked, and what each wrong answer is told from the rules", async () => {
    const { post } = await bench();
    const { status, view } = await post("/check", own);
    expect(status).toBe(200);
    expect([view.lacks, view.problems]).toEqual([[], []]);
    const [opening] = own.task.en.split("\n");
    expect(view.scenario?.task.en.split("\n")[0]).toBe(opening);
    expect(view.scenario?.asks?.flatMap(({ heldBy }) => heldBy).toSorted()).toEqual(
      own.requirements.map((_, index) => index),
    );
    expect(
      view.scenario?.wrongAnswers.map(({ findings, notMet }) => [findings.map(({ rule }) => rule), notMet]),
    ).toEqual([
      [["ring-open"], [1, 2]],
      [[], [2]],
    ]);
    expect(view.answers.every(({ isAsMeant }) => isAsMeant)).toBe(true);
    expect(readScenario(view.scenario, "own").ok).toBe(true);
  });

  it("says what is missing, one after the other", async () => {
    const { post } = await bench();
    const bare = { ...own, requirements: [], modelAnswers: [], wrongAnswers: [] };
    expect((await post("/check", bare)).view.lacks).toEqual([
      "requirements",
      "model-answer",
      "wrong-answers",
      "sound-wrong-answer",
    ]);
    const wrongAsModel = { ...own, modelAnswers: own.wrongAnswers.slice(0, 1).map(({ built }) => built) };
    expect((await post("/check", wrongAsModel)).view.lacks).toEqual(["model-answer"]);
    const rightAsWrong = {
      ...own,
      wrongAnswers: [
        ...own.wrongAnswers,
        ...own.modelAnswers.map((built) => ({ name: "right", built, findings: [] })),
      ],
    };
    expect((await post("/check", rightAsWrong)).view.lacks).toEqual(["wrong-answers"]);
  });

  it("names the place of what cannot be read, and refuses what is far too large", async () => {
    const { post } = await bench();
    const bad = await post("/check", { ...own, plan: { ...own.plan, places: own.plan.places.slice(1) } });
    expect([bad.status, bad.view.problems[0]?.field]).toEqual([422, "plan.places"]);
    expect((await post("/check", "{")).status).toBe(422);
    expect((await post("/check", `"${"x".repeat(256 * 1024)}"`)).status).toBe(413);
  });
});

describe("a task that is kept", () => {
  it("is on the bench while it is wired, in practice alone, and offered once nothing is missing", async () => {
    const { post, list, kits, bench: made, url } = await bench();
    expect((await post("/keep?state=draft", own)).status).toBe(200);
    expect([...kits().keys()]).not.toContain(own.id);
    expect((await post("/keep?state=on-bench", own)).status).toBe(200);
    expect(kits().get(own.id)?.isDraft).toBe(true);
    expect((await fetch(`${url}/wired?id=${own.id}`)).status).toBe(409);
    await made.does("sign-out", {});
    await made.does("sign-in", { by: "guest" });
    expect(await made.refusal("start-attempt", { scenario: own.id, mode: "open-day" })).toBe(
      "draft-practises",
    );
    await made.does("start-attempt", { scenario: own.id, mode: "practice" });
    const me = made.parts.people.unlockers()[0]?.id ?? "";
    await made.does("sign-in", { by: "pin", person: me, pin });
    const wired = (await (await fetch(`${url}/wired?id=${own.id}`)).json()) as WiredView;
    expect(wired).toEqual({ built: { cables: [] } });
    const offered = await post("/keep?state=offered", own);
    expect([offered.status, offered.view.scenario?.revision]).toEqual([200, 1]);
    expect(kits().get(own.id)).not.toHaveProperty("isDraft");
    expect((await list()).scenarios).toEqual([
      { id: own.id, title: own.title, level: own.level, revision: 1, state: "offered" },
    ]);
    expect(made.events("scenario-kept").map(({ author, content }) => [author?.by, content["state"]])).toEqual(
      [
        ["trainer", "draft"],
        ["trainer", "on-bench"],
        ["trainer", "offered"],
      ],
    );
  });

  it("is not offered while something is missing, and nothing is kept of that", async () => {
    const { post, list } = await bench();
    const answer = await post("/keep?state=offered", { ...own, modelAnswers: [] });
    expect([answer.status, answer.view.lacks]).toEqual([422, ["model-answer"]]);
    expect((await post("/keep?state=offered&try=1", own)).status).toBe(200);
    expect((await post("/keep?state=draft", { ...own, id: "first-spur" })).status).toBe(422);
    expect((await list()).scenarios).toEqual([]);
  });

  it("counts its revisions, and is there after a start with the last of them", async () => {
    const { post, bench: made } = await bench();
    await post("/keep?state=offered", own);
    const title = { en: "Another title", pl: "Inny tytuł" };
    expect((await post("/keep?state=offered", { ...own, title })).view.scenario?.revision).toBe(2);
    expect((await post("/keep?state=offered", { ...own, title })).view.scenario?.revision).toBe(2);
    const again = new ScenarioShelf(
      { kits: new Map<string, ScenarioKit>(), isRead: true },
      made.parts.records,
    );
    expect(
      [...again.kits.values()].map(({ scenario }) => [scenario.id, scenario.revision, scenario.title]),
    ).toEqual([[own.id, 2, title]]);
  });

  it("is taken away, and what was in work with it stays", async () => {
    const { post, list, kits, bench: made } = await bench();
    await post("/keep?state=offered", own);
    await made.does("sign-out", {});
    await made.does("sign-in", { by: "guest" });
    await made.does("start-attempt", { scenario: own.id, mode: "practice" });
    const me = made.parts.people.unlockers()[0]?.id ?? "";
    await made.does("sign-in", { by: "pin", person: me, pin });
    expect((await post(`/withdraw?id=${own.id}`, "")).status).toBe(200);
    expect([...kits().keys()]).not.toContain(own.id);
    expect((await list()).scenarios).toEqual([]);
    expect(made.bench.core.work.run?.state.scenario).toBe(own.id);
    expect(made.events("scenario-withdrawn")).toMatchObject([{ content: { scenario: own.id, revision: 1 } }]);
    expect((await post(`/withdraw?id=${own.id}`, "")).status).toBe(404);
  });

  it("goes out as a file and comes in on another bench as a draft, or as another beside its own", async () => {
    const { post, url } = await bench();
    await post("/keep?state=offered", own);
    const file = await fetch(`${url}/scenario?id=${own.id}&save=1`);
    expect(file.headers.get("content-disposition")).toContain(`${own.id}.json`);
    const text = await file.text();
    const other = await bench();
    expect((await other.post("/import?try=1", text)).view.scenario?.id).toBe(own.id);
    expect((await other.list()).scenarios).toEqual([]);
    expect((await other.post("/import", text)).status).toBe(200);
    expect((await other.post("/import", text)).view.scenario?.id).toBe(`${own.id}-2`);
    expect((await other.list()).scenarios.map(({ state }) => state)).toEqual(["draft", "draft"]);
    const broken = await other.post("/import", JSON.stringify({ ...own, level: 9 }, undefined, 2));
    expect([broken.status, broken.view.faults?.[0]?.line]).toEqual([
      422,
      1 +
        JSON.stringify(own, undefined, 2)
          .split("\n")
          .findIndex((line) => line.startsWith('  "level"')),
    ]);
  });

  it("is made by trainers alone, from a page of the bench", async () => {
    const { post, url } = await bench("assessor");
    expect((await post("/keep?state=draft", own)).status).toBe(403);
    expect((await fetch(url)).status).toBe(403);
    const trainer = await bench();
    expect((await trainer.post("/keep?state=draft", own, "")).status).toBe(403);
  });
});
