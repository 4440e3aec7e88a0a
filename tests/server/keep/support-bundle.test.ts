import { describe, expect, it } from "vitest";
import { withoutPeople } from "../../../server/keep/support-bundle.ts";
import { answers, byStaff, handIn } from "../desk/assessed-work.ts";
import { testServer } from "../test-server.ts";

const by = { by: "bench", session: null } as const;
const pin = "482915";

/** All that is told of the people of a bench on which somebody was assessed; none of it may leave the bench. */
const told = {
  learner: "Zbigniew Qxvarth",
  number: "CN-7731",
  badge: "SPURWISE-DEMO-02",
  technician: "Ida Vexholm",
  seen: "Hands shook at the second socket.",
  learnerSays: "I was unwell on that day.",
  says: "Come back in spring.",
  why: "He spoke of his own kitchen.",
};

async function workedBench() {
  const made = await testServer({ hasDemo: false });
  const { bench } = made;
  const { people } = bench.parts;
  const staff = await people.list.add({ name: told.technician, role: "technician", pin }, by);
  await people.list.add(
    { name: told.learner, role: "learner", centreNumber: told.number, badge: told.badge },
    by,
  );
  const attempt = await handIn(bench);
  await byStaff(bench, "assessor", "observe", {
    attempt,
    seen: told.seen,
    observerSays: "",
    learnerSays: told.learnerSays,
  });
  const criteria = answers({ safe: { answer: "not-yet", reason: told.why } });
  expect(await byStaff(bench, "assessor", "decide", { attempt, criteria, says: told.says })).toBe("done");
  await bench.does("sign-out", {});
  bench.parts.note(`decide: ZodError: "${told.says}" of ${told.learner.toUpperCase()} (${told.number})`);
  bench.parts.note(`back-up: none could be made in /home/qxvarth/stick/backups (ENOSPC)`);
  await bench.does("sign-in", { by: "pin", person: "id" in staff ? staff.id : "", pin });
  const ids = people.all().map(({ id }) => id);
  return { ...made, attempt, ids };
}

describe("the bundle for whoever helps from afar", () => {
  it("has how machine, records, board and program are, and the types of the last events", async () => {
    const { url, bench } = await workedBench();
    const bundle = (await (await fetch(`${url}/keep-data/support.json`)).json()) as Record<string, unknown>;
    expect(bundle).toMatchObject({
      format: 1,
      machine: { board: { state: "ready" }, log: { state: "sound" } },
      set: { board: bench.parts.board.id, isSimulated: true },
      people: { known: 2, isDemonstration: false },
      said: [
        { sentence: 'decide: ZodError: "…" of … (…)' },
        { sentence: "back-up: none could be made in …/backups (ENOSPC)" },
      ],
    });
    const types = (bundle["lastEvents"] as { type: string }[]).map(({ type }) => type);
    expect(types).toEqual(bench.rows().map(({ type }) => type));
    expect(types).toContain("observed");
  });

  it("has no name, number, badge, comment or id of anybody in it", async () => {
    const { url, ids, attempt } = await workedBench();
    const text = (await (await fetch(`${url}/keep-data/support.json`)).text()).toLowerCase();
    const { learner, technician, ...others } = told;
    const names = [learner, technician].flatMap((name) => name.split(" ").filter((one) => one.length > 3));
    for (const word of [...names, ...Object.values(others), ...ids, attempt])
      expect(text, word).not.toContain(word.toLowerCase());
  });

  it("is for the technician alone", async () => {
    const { bench, url } = await testServer();
    expect((await fetch(`${url}/keep-data/support.json`)).status).toBe(401);
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    expect((await fetch(`${url}/keep-data/support.json`)).status).toBe(403);
  });
});

describe("what the program said", () => {
  it.each([
    ["act: no row 7 of 17", ["7"], "act: no row … of 17"],
    ["Anna met Annabel", ["Anna"], "… met Annabel"],
    ["łukasz (a.b)", ["Łukasz", "a.b", ""], "… (…)"],
    ['said "so" and "so"', [], 'said "…" and "…"'],
    ["in /media/ola/stick: full", [], "in …/stick: full"],
    ["at judge (file:///opt/spurwise/dist/server/main.js:12:3)", [], "at judge (file://…/main.js:12:3)"],
  ])("%s is told without people", (sentence, people, kept) => {
    expect(withoutPeople(sentence, people)).toBe(kept);
  });
});
