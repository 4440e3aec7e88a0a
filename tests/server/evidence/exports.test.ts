import { request as httpRequest } from "node:http";
import { describe, expect, it } from "vitest";
import { allExports } from "../../../server/evidence/exports.ts";
import { exportPath } from "../../../server/evidence/evidence-routes.ts";
import { readCsv } from "../../../server/files/csv.ts";
import { hexOf } from "../../../server/store/row-hash.ts";
import { staffRoles } from "../../../shared/protocol/author.ts";
import { rightCables, type TestBench } from "../test-bench.ts";
import { Screen, testServer } from "../test-server.ts";

interface Answer {
  status: number;
  type: string;
  disposition: string;
  body: string;
}

const get = (url: string): Promise<Answer> =>
  new Promise((resolve, reject) => {
    httpRequest(url, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString("utf8")));
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          type: response.headers["content-type"] ?? "",
          disposition: response.headers["content-disposition"] ?? "",
          body,
        }),
      );
    })
      .on("error", reject)
      .end();
  });

/** Hands the first spur in, with one cable left out. */
async function handedIn(bench: TestBench): Promise<string> {
  await bench.isWiring();
  for (const [from, to] of rightCables.slice(1)) await bench.cable(from, to, 2.5);
  await bench.does("hand-in", {});
  const { id } = bench.attempt();
  await bench.does("leave-attempt", {});
  await bench.does("sign-out", {});
  return id;
}

/** Somebody of the staff unlocks the bench's own screen, or whoever is there leaves it. */
async function isThere(bench: TestBench, role: string | undefined): Promise<void> {
  if (role === undefined) await bench.does("sign-out", {});
  else await bench.does("sign-in", { by: "badge", badge: `SPURWISE-DEMO-${role.toUpperCase()}` });
}

describe("every export", () => {
  it("is for those its row in the table names and for nobody else", async () => {
    const { bench, url } = await testServer();
    const id = await handedIn(bench);
    const seen: Record<string, string[]> = {};
    for (const role of [undefined, ...staffRoles]) {
      if (role !== undefined) await isThere(bench, role);
      for (const made of allExports) {
        const { status } = await get(url + exportPath(made).replace(":attempt", id));
        expect([200, role === undefined ? 401 : 403], `${made.name} ${String(role)}`).toContain(status);
        if (status === 200) (seen[made.name] ??= []).push(String(role));
      }
      if (role !== undefined) await isThere(bench, undefined);
    }
    expect(seen).toEqual(Object.fromEntries(allExports.map(({ name, who }) => [name, [...who]])));
  });

  it("is sent as a file of its kind, and of an attempt that is not there is not sent", async () => {
    const { bench, url } = await testServer();
    const id = await handedIn(bench);
    await isThere(bench, "assessor");
    for (const made of allExports) {
      const found = await get(url + exportPath(made).replace(":attempt", id));
      expect(found).toMatchObject({ status: 200, disposition: expect.stringContaining(made.name) as string });
      expect(found.type).toContain(made.mediaType);
      if (made.of === "attempt")
        expect((await get(url + exportPath(made).replace(":attempt", "nobody"))).status).toBe(404);
      else expect((await get(`${url}${exportPath(made)}?mode=sideways`)).status).toBe(400);
    }
  });
});

describe("attempts.csv", () => {
  it("has a line an attempt, with the learner's name and what the bench proposed", async () => {
    const { bench, url } = await testServer();
    const id = await handedIn(bench);
    await isThere(bench, "assessor");
    const read = readCsv((await get(`${url}/evidence/attempts.csv`)).body);
    const [head, line] = "rows" in read ? read.rows : [];
    const cells = Object.fromEntries((head?.cells ?? []).map((title, at) => [title, line?.cells[at]]));
    expect(cells).toMatchObject({
      attempt: id,
      learner: "Bryony Cole",
      scenario: "first-spur",
      status: "handed-in",
      "proposed by the bench": "not-yet",
    });
    const other = readCsv((await get(`${url}/evidence/attempts.csv?mode=assessed`)).body);
    expect("rows" in other && other.rows).toHaveLength(1);
  });

  it("holds no formula, whatever a learner is called", async () => {
    const { bench, url } = await testServer({ hasDemo: false });
    const by = { by: "bench", session: null } as const;
    const { people } = bench.parts;
    await people.list.add({ name: "=HYPERLINK(1)", role: "learner", centreNumber: "+44", badge: "L-1" }, by);
    await people.list.add({ name: "Olwen Tansley", role: "assessor", badge: "A-1" }, by);
    await bench.does("sign-in", { by: "badge", badge: "L-1" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("leave-attempt", {});
    await bench.does("sign-in", { by: "badge", badge: "A-1" });
    const { body } = await get(`${url}/evidence/attempts.csv`);
    expect(body).toContain(",'=HYPERLINK(1),'+44,");
    expect(body).not.toMatch(/(^|,)"?[=+@-]/m);
  });
});

describe("attempt.json", () => {
  it("has every row of the attempt with the hashes of the log, and can be read while it is worked on", async () => {
    const { bench, url } = await testServer();
    const id = await handedIn(bench);
    await isThere(bench, "verifier");
    const told = JSON.parse((await get(`${url}/evidence/${id}/attempt.json`)).body) as {
      format: string;
      learner: object;
      attempt: object;
      events: { type: string; hash: string; content: { verdict?: { proposal: string } } }[];
    };
    expect(told).toMatchObject({ format: "spurwise-attempt-1", learner: { name: "Bryony Cole" } });
    const rows = bench.rows().filter(({ attemptId }) => attemptId === id);
    expect(told.events.map(({ hash }) => hash)).toEqual(rows.map(({ hash }) => hexOf(hash)));
    const handIn = told.events.find(({ type }) => type === "handed-in");
    expect(handIn?.content.verdict?.proposal).toBe("not-yet");
  });
});

describe("a file that nobody takes any more", () => {
  it("ends, and the bench goes on", async () => {
    const { bench, url } = await testServer();
    await handedIn(bench);
    await isThere(bench, "assessor");
    await new Promise<void>((resolve) => {
      const sent = httpRequest(`${url}/evidence/attempts.csv`, () => sent.destroy());
      sent.on("close", resolve).on("error", () => undefined);
      sent.end();
    });
    await new Screen(url).sees(() => true);
    expect(bench.notes).toEqual([]);
  });
});
