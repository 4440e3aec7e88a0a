import { describe, expect, it } from "vitest";
import {
  noAdjustments,
  type BadgesView,
  type ClassListView,
  type CriteriaView,
  type PeopleView,
} from "../../../shared/protocol/keep-view.ts";
import { demoCriteria } from "../../../server/demo/criteria.ts";
import { readCriteria } from "../../../server/desk/read-criteria.ts";
import { isStaff } from "../../../server/people/person.ts";
import { testServer } from "../test-server.ts";

const pin = "482915";
const by = { by: "bench", session: null } as const;

/** A bench with two learners and a staff of four, the technician or another at its own screen. */
async function keptBench(role: "technician" | "trainer" | "assessor" = "technician") {
  const due: { id: string; name: string; lastWallMs: number }[] = [];
  const made = await testServer({ hasDemo: false, due });
  const { people } = made.bench.parts;
  for (const [name, one] of [
    ["Ida Nowak", "technician"],
    ["Maud Perrin", "trainer"],
    ["Olwen Tansley", "assessor"],
  ] as const)
    await people.list.add({ name, role: one, pin }, by);
  await people.list.add({ name: "Bryony Cole", role: "learner", badge: "L-02" }, by);
  await people.list.add({ name: "Kasia Wrona", role: "learner", centreNumber: "77" }, by);
  const me = people.unlockers().find((one) => one.role === role)?.id ?? "";
  await made.bench.does("sign-in", { by: "pin", person: me, pin });
  const url = `${made.url}/keep-data`;
  const post = (path: string, body: string, headers: Record<string, string> = { origin: made.url }) =>
    fetch(`${url}${path}`, { method: "POST", headers, body });
  const idOf = (name: string) => people.all().find((one) => one.name === name)?.id ?? "";
  const get = async <Of>(path: string) => (await (await fetch(`${url}${path}`)).json()) as Of;
  return { ...made, url, post, get, people, idOf, due };
}

describe("a class that is brought in at the desk", () => {
  it("is shown before it comes in, and nothing is changed by looking", async () => {
    const { post, people } = await keptBench("trainer");
    const tried = await post("/class-list?try=1", "name;badge\nLeo Ashdown;L-20\nMia Fox;\n");
    expect([tried.status, await tried.json()]).toEqual([
      200,
      {
        learners: [
          { line: 2, name: "Leo Ashdown", centreNumber: "", hasBadge: true },
          { line: 3, name: "Mia Fox", centreNumber: "", hasBadge: false },
        ],
        faults: [],
      } satisfies ClassListView,
    ]);
    expect(people.list.learners()).toHaveLength(2);
    expect((await post("/class-list", "name;badge\nLeo Ashdown;L-20\nMia Fox;\n")).status).toBe(200);
    expect(people.list.learners().map(({ name }) => name)).toEqual([
      "Bryony Cole",
      "Kasia Wrona",
      "Leo Ashdown",
      "Mia Fox",
    ]);
  });

  it("says every line that stands against it, tried or not, and then nobody comes in", async () => {
    const { post, people } = await keptBench("trainer");
    const list = "name,centre number,badge\n,1,\nKasia Wrona,77,\nLeo,2,L-02\nMia,3,X\nNia,4,X\n";
    for (const path of ["/class-list?try=1", "/class-list"]) {
      const answer = await post(path, list);
      expect(answer.status).toBe(422);
      const { learners, faults } = (await answer.json()) as ClassListView;
      expect(learners).toEqual([]);
      expect(faults.map(({ line }) => line)).toEqual([2, 6]);
      const known = await post(path, "name,centre number,badge\nKasia Wrona,77,\nLeo,2,L-02\n");
      expect(((await known.json()) as ClassListView).faults).toEqual([
        { line: 2, message: "Kasia Wrona is on the list already" },
        { line: 3, message: "the badge is somebody's already" },
      ]);
    }
    expect(people.list.learners()).toHaveLength(2);
  });

  it("is for a trainer or a technician, from one of the bench's own pages", async () => {
    const { post, url } = await keptBench("assessor");
    expect((await post("/class-list", "name\nLeo\n")).status).toBe(403);
    expect((await fetch(`${url}/people`)).status).toBe(403);
    const trainer = await keptBench("trainer");
    expect((await trainer.post("/class-list", "name\nLeo\n", {})).status).toBe(403);
    expect(
      (await trainer.post("/class-list", "name\nLeo\n", { origin: "http://evil.example.org" })).status,
    ).toBe(403);
    expect(trainer.people.list.learners()).toHaveLength(2);
  });
});

describe("badges to print", () => {
  it("are made anew, told once, and let their learner in; the old ones do not any more", async () => {
    const { post, people, idOf, bench } = await keptBench("trainer");
    const answer = await post(
      "/badges",
      JSON.stringify({ people: [idOf("Bryony Cole"), idOf("Kasia Wrona")] }),
    );
    const { badges } = (await answer.json()) as BadgesView;
    expect(badges.map(({ name }) => name)).toEqual(["Bryony Cole", "Kasia Wrona"]);
    expect(new Set(badges.map(({ code }) => code)).size).toBe(2);
    for (const { code, id } of badges) {
      expect(code).toMatch(/^[2-9A-HJKMNP-Z]{4}(-[2-9A-HJKMNP-Z]{4}){2}$/);
      expect(await people.byBadge(code, "x")).toMatchObject({ id });
    }
    expect(await people.byBadge("L-02", "x")).toMatchObject({ code: "unknown-badge" });
    const kept = bench.events("person-kept").slice(-2);
    expect(kept).toMatchObject([
      { author: { by: "trainer" }, content: { what: "new-badge" } },
      { author: { by: "trainer" }, content: { what: "new-badge" } },
    ]);
    expect(JSON.stringify(bench.events("person-kept"))).not.toContain(badges[0]?.code);
  });

  it("are made for learners on the list alone, all or none", async () => {
    const { post, people, idOf } = await keptBench();
    const staff = people.all().find(isStaff)?.id;
    for (const asked of [{ people: [idOf("Bryony Cole"), "nobody"] }, { people: [staff] }])
      expect((await post("/badges", JSON.stringify(asked))).status).toBe(404);
    for (const body of ["", "{", `{"people":[]}`, `{"people":"all"}`])
      expect((await post("/badges", body)).status, body).toBe(400);
    expect(await people.byBadge("L-02", "x")).toMatchObject({ name: "Bryony Cole" });
  });
});

describe("what is kept of learners", () => {
  it("lists who is due, who is on hold, and what was agreed, which is sealed with the name", async () => {
    const { get, bench, idOf, due } = await keptBench();
    const id = idOf("Bryony Cole");
    due.push({ id, name: "Bryony Cole", lastWallMs: 5 });
    await bench.does("hold-person", { person: idOf("Kasia Wrona"), isHeld: true });
    const adjustments = { extraTimePercent: 25, hasRests: true, isLarge: true, isReadAloud: false };
    await bench.does("adjust-person", { person: id, adjustments });
    const view = await get<PeopleView>("/people");
    expect(view).toMatchObject({ isDemonstration: false, keepYears: 3 });
    expect(view.learners).toMatchObject([
      { name: "Bryony Cole", isHeld: false, hasBadge: true, dueSinceWallMs: 5, adjustments },
      {
        name: "Kasia Wrona",
        isHeld: true,
        hasBadge: false,
        dueSinceWallMs: null,
        adjustments: noAdjustments,
      },
    ]);
    expect(JSON.stringify(bench.events("person-kept"))).not.toContain("extraTime");
    // The name, the number and the badge stay as they were.
    expect(bench.parts.people.toldOf(id)).toEqual({ name: "Bryony Cole", centreNumber: "", adjustments });
    expect(await bench.parts.people.byBadge("L-02", "x")).toMatchObject({ id });
  });

  it("gives a learner large letters who has agreed on them, when they sign in", async () => {
    const { bench, idOf } = await keptBench();
    const person = idOf("Bryony Cole");
    await bench.does("adjust-person", { person, adjustments: { ...noAdjustments, isLarge: true } });
    await bench.does("sign-in", { by: "name", learner: idOf("Kasia Wrona") });
    expect(bench.view().isLarge).toBe(false);
    await bench.does("sign-in", { by: "badge", badge: "L-02" });
    expect(bench.view().isLarge).toBe(true);
  });

  it("is gone with the name when a learner is erased", async () => {
    const { bench, idOf, get } = await keptBench();
    const person = idOf("Bryony Cole");
    await bench.does("adjust-person", { person, adjustments: { ...noAdjustments, hasRests: true } });
    await bench.does("erase-person", { person });
    expect((await get<PeopleView>("/people")).learners.map(({ name }) => name)).toEqual(["Kasia Wrona"]);
    expect(bench.parts.people.toldOf(person)).toBeUndefined();
  });
});

describe("a file of criteria", () => {
  const own = {
    ...demoCriteria,
    id: "centre",
    title: { en: "Ours", pl: "Nasze" },
    criteria: demoCriteria.criteria.slice(0, 2),
  };
  const text = JSON.stringify({ ...own, isDemo: undefined }, undefined, 2);

  it("goes out, is shown before it comes in, and then is what assessors decide by, after a start too", async () => {
    const { post, get, url, bench } = await keptBench("trainer");
    expect(await (await fetch(`${url}/criteria.json`)).json()).toEqual(demoCriteria);
    const tried = await post("/criteria?try=1", text);
    expect((await tried.json()) as CriteriaView).toMatchObject({ title: { en: "Ours" }, faults: [] });
    expect((await get<CriteriaView>("/criteria")).title).toEqual(demoCriteria.title);
    expect((await post("/criteria", text)).status).toBe(200);
    expect((await get<CriteriaView>("/criteria")).criteria.map(({ id }) => id)).toEqual(["safe", "right"]);
    expect(readCriteria(bench.folder, () => undefined).id).toBe("centre");
    expect(bench.events("criteria-chosen")).toMatchObject([
      { author: { by: "trainer" }, content: { criteria: expect.stringMatching(/^[0-9a-f]{64}$/) as string } },
    ]);
  });

  it.each([
    ["is cut off", text.slice(0, 40), text.slice(0, 40).split("\n").length],
    [
      "has a word that is not known",
      text.replace(`"danger"`, `"colour"`),
      text.split(`"danger"`)[0]?.split("\n").length,
    ],
    ["has an id twice", text.replace(`"right"`, `"safe"`), text.split(`"criteria"`)[0]?.split("\n").length],
  ])("that %s is refused with its line, and nothing is changed", async (_what, broken, line) => {
    const { post, get, bench } = await keptBench("trainer");
    const answer = await post("/criteria", broken);
    expect(answer.status).toBe(422);
    expect(((await answer.json()) as CriteriaView).faults[0]?.line).toBe(line);
    expect((await get<CriteriaView>("/criteria")).title).toEqual(demoCriteria.title);
    expect(bench.events("criteria-chosen")).toEqual([]);
  });

  it("is not taken from an assessor, who may read it", async () => {
    const { post, get } = await keptBench("assessor");
    expect((await post("/criteria", text)).status).toBe(403);
    expect((await get<CriteriaView>("/criteria")).criteria).toHaveLength(demoCriteria.criteria.length);
  });
});
