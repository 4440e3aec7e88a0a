import { expect, type Page } from "@playwright/test";
import { BenchLink } from "./bench-link.ts";
import type { BenchProcess } from "./bench-process.ts";
import { test } from "./bench-test.ts";
import { isClean, signInAtDesk } from "./desk-page.ts";
import { startBenchWithPeople } from "./desk-people.ts";

const networkPort = 4796;
const desk = `http://127.0.0.1:${networkPort}/desk/`;

let running: BenchProcess;
test.beforeAll(async () => {
  running = await startBenchWithPeople(networkPort);
});
test.afterAll(async () => {
  await running.stop();
});

/** Drags a finger over the plan, from and to shares of its width and height. */
const drag = async (page: Page, from: readonly [number, number], to: readonly [number, number]) => {
  const box = await page.getByTestId("author-plan").boundingBox();
  if (!box) throw new Error("the plan is not there");
  const at = ([x, y]: readonly [number, number]) => [box.x + x * box.width, box.y + y * box.height] as const;
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at(to), { steps: 3 });
  await page.mouse.up();
};

type Ends = readonly (readonly [string, string])[];
const ring: Ends = [
  ["socket-1.a", "way-1.a"],
  ["socket-1.b", "socket-2.a"],
  ["socket-2.b", "way-1.b"],
];
const spur: Ends = [
  ["socket-1.a", "way-1.a"],
  ["socket-1.b", "way-1.b"],
  ["socket-1.c", "socket-2.a"],
];
const open: Ends = ring.slice(0, 2);

const wire = async (link: BenchLink, ends: Ends): Promise<void> => {
  await link.does("pull", { what: "all" });
  await link.seen(({ attempt }) => attempt?.cables.length === 0);
  await link.plugCables(ends, 2.5);
  await link.seen(
    ({ attempt }) =>
      attempt?.cables.length === ends.length &&
      attempt.cables.every(({ conductors, isUnsaved }) => conductors.length === 3 && !isUnsaved),
  );
};

test("a trainer makes a task from an empty grid, wires its answers on the bench, and a learner solves it", async ({
  page,
}) => {
  test.setTimeout(150_000);
  const link = new BenchLink(running.address);
  await page.setViewportSize({ width: 1280, height: 800 });
  await signInAtDesk(page, desk, "Maud Perrin");
  const get = (id: string) => page.getByTestId(id);
  await get("page-prepare").click();
  await get("author-new").click();

  await test.step("the house", async () => {
    await drag(page, [0.05, 0.06], [0.5, 0.6]);
    await drag(page, [0.5, 0.06], [0.94, 0.6]);
    await expect(get("author-room-1")).toBeAttached();
    await get("author-undo").click();
    await expect(get("author-room-1")).toHaveCount(0);
    await get("author-redo").click();
    await expect(get("author-room-1")).toBeAttached();
    await get("author-tool-floor").click();
    await drag(page, [0.05, 0.4], [0.5, 0.4]);
    await get("author-run-out-7").click();
    await expect(get("author-run-out-7")).toHaveCount(0);
    await get("author-tool-room").click();
    await isClean(page, "prepare-house");
    await get("author-tab-stations").click();
    for (const [id, x, y] of [
      ["way-1", 0.06, 0.3],
      ["socket-1", 0.3, 0.07],
      ["socket-2", 0.8, 0.07],
    ] as const) {
      await get(`author-take-${id}`).click();
      await drag(page, [x, y], [x, y]);
      await expect(get(`author-at-${id}`)).toBeVisible();
    }
    await isClean(page, "prepare-stations");
  });

  await test.step("what is asked", async () => {
    await get("author-tab-asked").click();
    for (const kind of ["one-circuit", "ring", "in-ring"]) {
      await get("author-ask-kind").selectOption(kind);
      if (kind === "one-circuit")
        for (const id of ["socket-1", "socket-2"]) await get(`author-ask-${id}`).click();
      await get("author-ask-add").click();
    }
    await expect(get("author-asked").getByRole("listitem")).toHaveCount(3);
    await expect(get("author-asked")).toContainText("In the ring itself, not on a spur");
    await isClean(page, "prepare-asked");
    await get("author-tab-text").click();
    await get("author-title-en").fill("The two rooms");
    await get("author-title-pl").fill("Dwa pokoje");
    await get("author-title-pl").blur();
    await expect(get("author-task")).toContainText(
      "1. Build a ring from way 1 through socket outlet 1 and socket outlet 2",
    );
    await isClean(page, "prepare-text");
  });

  await test.step("answers, wired on the bench", async () => {
    await get("author-tab-answers").click();
    await get("author-take-model").click();
    await expect(get("author-wired-said")).toContainText("Nobody works on this scenario");
    await get("author-to-bench").click();
    await expect(get("author-state")).toContainText("on the bench");
    await link.seen(({ scenarios }) =>
      scenarios.some(({ id, isDraft }) => id === "own-the-two-rooms" && isDraft),
    );
    await link.does("sign-in", { by: "guest" });
    await expect(
      link.does("start-attempt", { scenario: "own-the-two-rooms", mode: "open-day" }),
    ).rejects.toThrow("draft-practises");
    await link.does("start-attempt", { scenario: "own-the-two-rooms", mode: "practice" });
    await link.does("accept-caution", {});
    await wire(link, ring);
    await get("author-take-model").click();
    await expect(get("author-answer-model-0")).toContainText("The bench says: met.");
    await wire(link, spur);
    await get("author-take-wrong").click();
    await expect(get("author-answer-wrong-0")).toContainText("In the ring itself");
    await expect(get("lack-wrong-answers")).toBeVisible();
    await expect(get("author-offer")).toBeDisabled();
    await wire(link, open);
    await get("author-wrong-name").fill("one leg left out");
    await get("author-take-wrong").click();
    await expect(get("author-answer-wrong-1")).toContainText("as it should be");
    await isClean(page, "prepare-answers");
    await link.does("leave-attempt", {});
    await get("author-offer").click();
    await expect(get("author-said")).toContainText("revision 2");
    await get("author-back").click();
    await expect(get("author-row-own-the-two-rooms")).toContainText("offered to learners");
    await isClean(page, "prepare-list");
  });

  await test.step("a learner solves it", async () => {
    await link.does("sign-out", {});
    await link.does("sign-in", { by: "guest" });
    await link.does("start-attempt", { scenario: "own-the-two-rooms", mode: "practice" });
    await link.does("accept-caution", {});
    await wire(link, ring);
    // A plug is taken to be in once the board has been at rest for a moment.
    await expect(() => link.does("hand-in", {})).toPass();
    await link.seen(({ attempt }) => attempt?.verdict?.proposal === "met");
    link.close();
  });
});
