import { describe, expect, it } from "vitest";
import { deskRow } from "../../../server/desk/desk-rows.ts";
import { sortedPage } from "../../../server/desk/sorted-page.ts";
import type { AttemptRecord } from "../../../server/store/attempt-record.ts";
import type { NewEvent } from "../../../server/store/log-writer.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import {
  type DeskList,
  type DeskRow,
  type ListColumn,
  listColumns,
} from "../../../shared/protocol/desk-view.ts";
import type { TestBench } from "../test-bench.ts";
import { testServer } from "../test-server.ts";

const full = { joins: [], codes: [], unknown: [] };
const learners = [null, "demo-02", "demo-03", "erased-1", "demo-01"];
const scenarios = ["first-spur", "boiler", "gone-scenario", "kitchen-radial"];

/** Sixty-one short attempts of several learners at several tasks; every third is handed in, every fifth assessed. */
function fill(bench: TestBench): void {
  const { records } = bench.parts;
  if (!records) throw new Error("no records");
  for (let index = 0; index < 61; index += 1) {
    const attemptId = `attempt-${String(index)}`;
    const of = (type: string, content: object): NewEvent =>
      ({ attemptId, author: byBench, type, content }) as NewEvent;
    const proposal = index % 2 === 0 ? "met" : "not-yet";
    records.log.append([
      of("attempt-started", {
        scenario: scenarios[(index * 7) % 4],
        scenarioRevision: 1,
        scenarioHash: "00",
        board: "small",
        boardHash: "00",
        rulePackVersion: "1",
        softwareVersion: "0.1.0",
        learner: learners[(index * 3) % 5] ?? null,
        kind: "first",
        mode: index % 5 === 0 ? "assessed" : "practice",
        isExistingCircuit: false,
      }),
      ...(index % 3 === 0
        ? [of("handed-in", { full, wiringHash: "00", verdict: { findings: [], proposal }, tryCount: 0 })]
        : [of("attempt-left", { reason: "left" })]),
    ]);
  }
}

async function filled() {
  const { bench, url } = await testServer();
  fill(bench);
  const { records } = bench.parts;
  if (!records) throw new Error("no records");
  return { bench, url, attempts: records.attempts };
}

const rankOf = (order: readonly (string | null)[]) => (value: string | null) => order.indexOf(value);
/** What each column is held to here: a plain comparison of two rows, up. */
const compare: Record<ListColumn, (a: DeskRow, b: DeskRow) => number> = {
  learner: (a, b) => new Intl.Collator("en").compare(a.learner, b.learner),
  // A task that is not there any more comes last, up and down.
  task: (a, b) =>
    a.title && b.title ? a.title.en.localeCompare(b.title.en, "en") : Number(!a.title) - Number(!b.title),
  mode: (a, b) => rankOf(["practice", "assessed"])(a.mode) - rankOf(["practice", "assessed"])(b.mode),
  status: (a, b) => rankOf(["handed-in", "left"])(a.status) - rankOf(["handed-in", "left"])(b.status),
  started: () => 0,
  proposed: (a, b) => {
    const order = [null, "not-yet", "cannot-say", "met"];
    return rankOf(order)(a.proposal) - rankOf(order)(b.proposal);
  },
  decision: () => 0,
};

describe("a list in another order", () => {
  it.each(listColumns.flatMap((by) => [true, false].map((isUp) => ({ by, isUp }))))(
    "has every attempt once over its pages, by $by, up: $isUp",
    async ({ by, isUp }) => {
      const { bench, attempts } = await filled();
      for (const filter of [{}, { mode: "practice" }]) {
        const found: AttemptRecord[] = [];
        for (let after: AttemptRecord | undefined, more = true; more; more = after !== undefined) {
          const page = sortedPage(bench.parts, attempts, filter, 7, after, { by, isUp, language: "en" });
          expect(page.attempts.length).toBeLessThanOrEqual(7);
          found.push(...page.attempts);
          after = page.next;
        }
        const listed = attempts.page(filter, 100).attempts;
        expect(found.map(({ attemptId }) => attemptId).sort()).toEqual(
          listed.map(({ attemptId }) => attemptId).sort(),
        );
        const rows = found.map((record) => deskRow(bench.parts, record));
        const place = new Map(listed.map(({ attemptId }, at) => [attemptId, at]));
        for (const [at, row] of rows.entries()) {
          const next = rows[at + 1];
          if (!next) continue;
          const isGone = !row.title || !next.title;
          const step = (isUp || (by === "task" && isGone) ? 1 : -1) * compare[by](row, next);
          expect(step, `${row.id} before ${next.id}`).toBeLessThanOrEqual(0);
          // Of those that say the same the last started comes first.
          const inLine = (place.get(next.id) ?? 0) - (place.get(row.id) ?? 0);
          if (by === "started") expect(isUp ? -inLine : inLine).toBe(1);
          else if (step === 0 && by !== "learner" && !isGone) expect(inLine).toBeGreaterThan(0);
        }
      }
    },
  );

  it("goes on from page to page by its address, and one in no known order is no list", async () => {
    const { bench, url } = await filled();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-ASSESSOR" });
    const list = async (query: string) => fetch(`${url}/desk-data/attempts?${query}`);
    for (const by of listColumns) {
      const asked = `sort=${by}&order=up`;
      const first = (await (await list(asked)).json()) as DeskList;
      const second = (await (await list(`${asked}&after=${first.next ?? ""}`)).json()) as DeskList;
      expect([first.attempts.length, second.attempts.length, second.next], by).toEqual([50, 11, undefined]);
      expect(new Set([...first.attempts, ...second.attempts].map(({ id }) => id)).size, by).toBe(61);
    }
    expect((await list("sort=luck")).status).toBe(400);
    expect((await list("sort=task&order=sideways")).status).toBe(400);
  });
});
