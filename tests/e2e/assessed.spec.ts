import { expect } from "@playwright/test";
import { stationKinds } from "../../shared/board/station-kinds.ts";
import { ruleIds } from "../../shared/rules/rule.ts";
import type { BenchLink } from "./bench-link.ts";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

/** A board full of mistakes: each pair of entries with the size of its cable. */
const mistakes = [
  ["socket-2.c", "socket-3.a", 1.5],
  ["socket-3.b", "socket-4.a", 1.5],
  ["socket-2.d", "fcu-1.c", 1],
  ["fcu-1.a", "wall-light-1.a", 1],
  ["socket-1.c", "wall-light-2.a", 1],
] as const;

let running: BenchProcess;
let link: BenchLink;
test.beforeEach(({ workshop }) => {
  ({ running, link } = workshop);
});

test.describe("assessed work at 800x480", () => {
  test.use({ viewport: { width: 800, height: 480 } });

  test("a guest and a tapped name may not be assessed; a badge may, and the bench then tells nothing of right or wrong up to the waiting list and the hand-in", async ({
    page,
  }) => {
    const bench = new BenchScreen(page);
    const frames: string[] = [];
    page.on("websocket", (socket) =>
      socket.on("framereceived", ({ payload }) => frames.push(payload.toString())),
    );

    await page.goto(running.address);
    await bench.get("key-guest").tap();
    await bench.get("scenario-sun-room").tap();
    await expect(bench.get("key-assessed")).toBeDisabled();
    await expect(bench.get("key-assessed")).toContainText("Needs your badge");
    await link.reset();
    await bench.get("learner-demo-02").tap();
    await bench.get("scenario-sun-room").tap();
    await bench.get("key-assessed").tap();
    await expect(bench.get("refusal")).toContainText("badge");
    await link.reset();

    await bench.signInByBadge("SPURWISE-DEMO-99");
    await expect(bench.get("refusal")).toContainText("does not know that badge");
    await page.reload();
    await bench.signInByBadge("SPURWISE-DEMO-01");
    await bench.get("scenario-sun-room").tap();
    frames.length = 0;
    await bench.get("key-assessed").tap();
    await bench.get("key-accept-caution").tap();
    await bench.matchAsFound();

    // What was done in which order is in the log for the assessor; the screen keeps no list and tells no reason.
    await bench.get("dead-terminal-L").tap();
    await bench.get("dead-terminal-N").tap();
    await expect(bench.get("dead-reading")).toContainText("230 V");
    await expect(bench.get("dead-missed")).toHaveCount(0);
    await expect(bench.get("screen-make-dead").locator("li")).toHaveCount(0);
    await bench.makeDead();
    await bench.get("key-declare-dead").tap();

    await bench.enterNumber("99");
    await expect(bench.get("question-designCurrentA")).toContainText("Your answer: 99 A");
    await expect(bench.get("screen-plan")).not.toContainText(/right|not yet/i);
    await bench.get("key-answer-1").tap();
    await expect(bench.get("question-csaMm2")).toContainText("Your answer: 1 mm²");
    await expect(page.getByRole("img", { name: /Currents to compare/ })).toHaveCount(0);

    await bench.get("key-plan-next").tap();
    for (const [entryA, entryB, csaMm2] of mistakes)
      await link.does("plug-cable", { entryA, entryB, csaMm2 } as Parameters<
        typeof link.does<"plug-cable">
      >[1]);
    await bench.fit("fcu-1", "fuseRatingA", "13");
    await bench.fit("fcu-2", "fuseRatingA", "13");
    await bench.fit("fcu-2", "switched", "false");
    await expect(page.locator("[data-testid^='cable-']")).toHaveCount(8);
    await expect(bench.get("say")).toHaveText("Wire the board for the task.");
    await expect(bench.get("key-check")).toHaveCount(0);
    await expect(bench.get("key-hint")).toHaveCount(0);
    await expect(bench.findings()).toHaveCount(0);
    await expect(bench.get("screen-wire")).not.toContainText("%");
    await bench.get("cable-fcu-1.a~wall-light-1.a").tap();
    await expect(bench.get("key-pull-cable")).toBeVisible();
    await expect(bench.get("screen-wire")).not.toContainText("%");
    await bench.get("key-close-card").tap();
    await bench.get("key-notes").tap();
    await expect(bench.get("screen-wire")).toContainText("The assessor gives the result.");
    await bench.get("key-notes").tap();

    await bench.get("key-ready").tap();
    await expect(bench.get("say")).toHaveText("Ready for a check. Leave the board as it is.");
    await bench.get("station-socket-2").tap();
    await expect(bench.get("key-run-cable")).toHaveCount(0);
    await expect(bench.get("key-change-fuseRatingA")).toHaveCount(0);
    await bench.get("key-close-card").tap();
    await expect(link.does("pull", { what: "all" })).rejects.toThrow("frozen");
    await expect(
      link.does("declare", { subject: "fcu-1", key: "fuseRatingA", value: 3 } as Parameters<
        typeof link.does<"declare">
      >[1]),
    ).rejects.toThrow("frozen");
    await expect(page.locator("[data-testid^='cable-']")).toHaveCount(8);

    // To look at a step does not leave the waiting list; the key that leaves it is there.
    await bench.get("step-hand-in").tap();
    await expect(bench.get("waiting")).toContainText("You are on the waiting list.");
    await expect(bench.get("say")).toHaveText("Ready for a check. Leave the board as it is.");
    await bench.get("key-take-back").tap();
    await expect(bench.get("waiting")).toHaveCount(0);
    await bench.get("key-ready").tap();
    await expect(bench.get("waiting")).toBeVisible();
    await expect(page.locator("[data-testid^='requirement-']")).toHaveCount(0);
    await bench.get("key-hand-in").tap();
    await bench.get("key-yes").tap();
    await expect(bench.get("screen-handed-in")).toContainText("Handed in");
    await expect(bench.get("screen-handed-in")).toContainText("The assessor tells you the result.");
    await expect(bench.get("screen-handed-in")).not.toContainText(/\bmet\b|put right|danger/i);

    // Every byte the screen got since the attempt began. A cooker control is a station too.
    const sent = frames.join("\n");
    expect(frames.length).toBeGreaterThan(10);
    expect(sent.includes('"verdict":null')).toBe(true);
    const isSent = (name: string) => new RegExp(`"${name}(?![\\w-])`).test(sent);
    const derived = [
      "share",
      "isOutOfOrder",
      "isRight",
      "bars",
      "proposal",
      "findings",
      "isAsFound",
      "lengthM",
    ];
    const rules = ruleIds.filter((rule) => !(stationKinds as readonly string[]).includes(rule));
    expect([...derived, ...rules].filter(isSent)).toEqual([]);
  });
});
