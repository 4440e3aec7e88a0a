import { expect } from "@playwright/test";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen, panelsOfRun } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

const asFound = ["socket-1.a~way-1.a", "socket-1.b~socket-2.a", "socket-2.b~way-1.b"];

/** What the full caution must say before any work, whatever its wording. */
const cautions = [
  /training board/i,
  /extra-low voltage/i,
  /can kill/i,
  /prove dead/i,
  /no proof/i,
  /licensed or registered/i,
  /local code/i,
];

let running: BenchProcess;
test.beforeEach(({ workshop }) => {
  ({ running } = workshop);
});

/** Chooses a task as a guest and practises; ends where the caution is accepted. */
const startAsGuest = async (bench: BenchScreen, scenario: string): Promise<void> => {
  await bench.page.goto(running.address);
  await bench.get("key-guest").tap();
  await bench.get(`scenario-${scenario}`).tap();
  await bench.get("key-practice").tap();
  for (const caution of cautions) await expect(bench.get("screen-caution")).toContainText(caution);
  await bench.get("key-accept-caution").tap();
};

const doneSteps = (bench: BenchScreen) =>
  bench.get("screen-make-dead").locator("li.done[data-testid^='dead-step-']");

/** Tests a live circuit, reads that it is live, and then makes it dead. */
const makeDeadAfterASlip = async (bench: BenchScreen): Promise<void> => {
  await bench.get("dead-terminal-L").tap();
  await bench.get("dead-terminal-N").tap();
  await expect(bench.get("dead-reading")).toContainText("230 V");
  await expect(bench.get("dead-missed")).toContainText("live");
  // A locked step is dimmed, and says why when it is touched all the same.
  await bench.get("step-wire").tap({ force: true });
  await expect(bench.get("refusal")).toContainText("Make the circuit dead first.");
  await bench.makeDead();
  await expect(doneSteps(bench)).toHaveCount(8);
  await expect(bench.get("dead-missed")).toHaveCount(0);
};

/** A question of the worksheet with its answer and what is said of it. */
const questionOf = (bench: BenchScreen, question: string) =>
  bench.page.locator("li").filter({ has: bench.get(`question-${question}`) });

const answerPlan = async (bench: BenchScreen): Promise<void> => {
  // 1200 + 300 + 20 + 20 W at 230 V: 6.7 A.
  const current = questionOf(bench, "designCurrentA");
  // A nudge first, then the relation with its numbers, then the answer.
  await bench.enterNumber("15.4");
  await expect(current).toContainText("15.4 A");
  await expect(current).toContainText("Not yet");
  await expect(current).toContainText("divide by 230 V");
  await bench.enterNumber("12");
  await expect(current).toContainText("W ÷ 230 V");
  await bench.enterNumber("13");
  await expect(current).toContainText("6.7 A");
  await bench.enterNumber("6.7");
  await expect(current).toContainText("Right");
  const size = questionOf(bench, "csaMm2");
  await bench.get("key-answer-1").tap();
  await expect(size).toContainText("Not yet");
  await expect(size).toContainText("method");
  await bench.get("key-answer-2.5").tap();
  await expect(size).toContainText("Right");
  // Each FCU has its fuse: 6.7 A behind the first, two lights behind the second.
  for (const [question, station, wrong, right, why] of [
    ["fuseRatingA", "FCU 1", ["3", "5"], "13", "takes 6.7 A"],
    ["secondFuseRatingA", "FCU 2", ["13"], "3", "What does it feed?"],
  ] as const) {
    const fuse = questionOf(bench, question);
    await expect(fuse).toContainText(`Which fuse at ${station}?`);
    for (const answer of wrong) {
      await bench.get(`key-answer-${answer}`).tap();
      await expect(fuse).toContainText(`Your answer: ${answer} A`);
    }
    await expect(fuse).toContainText("Not yet");
    await expect(fuse).toContainText(why);
    await bench.get(`key-answer-${right}`).tap();
    await expect(fuse).toContainText("Right");
  }
};

/** Wires the sun room: on the plan what is 2.5 mm², on the board's face what is 1 mm². */
const wireSunRoom = async (bench: BenchScreen): Promise<void> => {
  await bench.takeCable(2.5);
  await bench.wireByTaps("socket-2", "fcu-1");
  await bench.get("entry-fcu-1.a").tap();
  await bench.expectCable("fcu-1.a~socket-2.c");
  await bench.wireFromEntry("fcu-1.c", "socket-3");
  await bench.expectCable("fcu-1.c~socket-3.a");
  await bench.wireByDrag("socket-3", "socket-4");
  await bench.expectCable("socket-3.b~socket-4.a");
  await bench.wireFromEntry("fcu-1.d", "fcu-2", "fcu-2.a");
  await bench.expectCable("fcu-1.d~fcu-2.a");

  await bench.takeCable(1);
  await bench.get("key-face").tap();
  await bench.openOnFace("fcu-2", "wall-light-1");
  await bench.get("entry-fcu-2.c").tap();
  await bench.get("entry-wall-light-1.a").tap();
  await expect(bench.get("contact-wall-light-1.a.E")).toHaveAccessibleName(/leads to fcu 2/i);
  // With two open, a third takes the place of the one that was opened first.
  await bench.get("key-close-fcu-2").tap();
  await bench.get("station-wall-light-2").tap();
  for (const role of ["L", "N", "E"]) {
    await bench.get(`contact-wall-light-1.b.${role}`).tap();
    await bench.get(`contact-wall-light-2.a.${role}`).tap();
    await expect(bench.get(`contact-wall-light-2.a.${role}`)).toHaveAccessibleName(/leads to light 1/i);
  }
  // Three leads by hand are a cable whose size nobody has said.
  await expect(bench.get("say")).toContainText(/how thick|size/i);
  await bench.get("ask-size").getByTestId("key-size-1").tap();
  await expect(bench.get("ask-size")).toBeHidden();
  await bench.get("key-face").tap();
  await bench.expectCable("wall-light-1.b~wall-light-2.a");
};

for (const { name, ...viewport } of panelsOfRun)
  test.describe(`a whole go at ${name}`, () => {
    test.use({ viewport });

    test("from the caution to a handed-in sun room with every requirement met", async ({ page }) => {
      const bench = new BenchScreen(page);
      await startAsGuest(bench, "sun-room");

      await expect(bench.get("say")).toHaveText("First wire what was there. Cables in: 0 of 3.");
      await bench.matchAsFound();
      await expect(bench.get("say")).toHaveText("Make the circuit dead before you touch a lead.");
      await bench.get("key-menu").tap();
      await bench.get("key-as-found").tap();
      for (const row of await bench.get("dialog-as-found").getByRole("listitem").all())
        await expect(row).toContainText(/\bin$/);
      await bench.get("key-close").tap();

      await makeDeadAfterASlip(bench);
      await bench.get("step-plan").tap();
      await answerPlan(bench);
      await bench.get("key-plan-next").tap();
      for (const cable of asFound) await bench.expectCable(cable);
      await expect(bench.get("say")).toHaveText("Choose what is fitted at FCU 1: tap it twice.");
      await wireSunRoom(bench);

      await bench.fit("fcu-1", "fuseRatingA", "13");
      await bench.fit("fcu-2", "fuseRatingA", "3");
      await bench.fit("fcu-2", "switched", "false");
      await bench.check();
      await bench.get("finding-unswitched").first().tap();
      const note = bench.get("note-finding-unswitched");
      for (const part of ["A light needs a switch in its line.", "How to put it right", "Where", "What"])
        await expect(note).toContainText(part);
      await bench.get("key-show-place").tap();
      await expect(note).toBeHidden();
      await bench.get("key-close-card").tap();

      await bench.fit("fcu-2", "switched", "true");
      await bench.check();
      await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();
      await expect(bench.findings()).toHaveCount(0);

      await bench.get("step-hand-in").tap();
      const requirements = page.locator("[data-testid^='requirement-']");
      await expect(requirements).toHaveCount(7);
      for (const requirement of await requirements.all()) await expect(requirement).toContainText(/\bmet$/);
      await bench.get("key-hand-in").tap();
      await bench.get("key-yes").tap();
      await expect(bench.get("screen-handed-in")).toContainText("Handed in");
      await bench.get("key-leave").tap();
      await expect(bench.get("screen-scenarios")).toBeVisible();
    });
  });

test.describe("mistakes and second thoughts at 800x480", () => {
  test.use({ viewport: { width: 800, height: 480 } });

  test("a point on a spur's end is named at its cable; undo takes a cable back; the board is cleared and had back; hints go from nudge to place", async ({
    page,
  }) => {
    const bench = new BenchScreen(page);
    await startAsGuest(bench, "extend-a-ring");
    await bench.matchAsFound();
    await bench.makeDead();
    await bench.get("step-wire").tap();

    await bench.takeCable(2.5);
    await bench.wireByTaps("socket-5", "socket-4");
    await bench.expectCable("socket-4.a~socket-5.b");
    await bench.check();
    await expect(bench.get("finding-spur-on-spur")).toBeVisible();
    await bench.get("finding-spur-on-spur").tap();
    await expect(bench.get("note-finding-spur-on-spur")).toContainText(/socket outlet 4/i);
    await bench.get("key-show-place").tap();
    // Both stations of the cable are to be seen beside the note that leads back.
    const strip = (await bench.get("key-open-card").boundingBox())!;
    for (const station of ["socket-4", "socket-5"]) {
      const plate = (await bench.get(`station-${station}`).boundingBox())!;
      expect(plate.y >= strip.y + strip.height || plate.y + plate.height <= strip.y).toBe(true);
    }
    await bench.get("key-back-to-note").tap();
    await expect(bench.get("note-finding-spur-on-spur")).toBeVisible();
    await bench.get("key-show-place").tap();
    await bench.get("key-open-card").tap();
    await expect(bench.get("key-pull-cable")).toBeVisible();
    await bench.get("key-close-card").tap();
    // The touch on the ground beside a cable is the cable's too.
    await bench.get("cable-socket-4.a~socket-5.b").tap();
    await expect(bench.get("finding-spur-on-spur")).toBeVisible();
    await bench.get("key-close-card").tap();

    await bench.get("key-undo").tap();
    await expect(bench.get("cable-socket-4.a~socket-5.b")).not.toBeAttached();
    await bench.get("key-notes").tap();
    await expect(bench.get("screen-wire").getByText("The board has changed since this check.")).toBeVisible();
    await bench.get("key-notes").tap();

    await bench.get("key-menu").tap();
    await bench.get("key-clear").tap();
    await bench.get("key-no").tap();
    await bench.expectCable("socket-2.c~socket-5.a");
    await bench.get("key-menu").tap();
    await bench.get("key-clear").tap();
    await bench.get("key-yes").tap();
    await expect(page.locator("[data-testid^='cable-']")).toHaveCount(0);
    await bench.get("key-undo").tap();
    await expect(page.locator("[data-testid^='cable-']")).toHaveCount(5);

    await bench.get("step-hand-in").tap();
    await bench.get("key-check").tap();
    await expect(bench.get("requirement-0")).toContainText("not yet");
    await bench.get("requirement-0").tap();
    await expect(bench.get("screen-wire").getByRole("region", { name: "Socket outlet 4" })).toBeVisible();
    await bench.get("key-close-card").tap();

    for (const [left, hint] of [
      [2, "Where does a cable of the ring pass close to the desk?"],
      [1, "To put a point into a ring"],
      [0, "The cable from socket outlet 3 to the way runs past socket outlet 4."],
    ] as const) {
      await bench.get("key-hint").tap();
      await expect(bench.get("key-hint")).toContainText(`(${left})`);
      await expect(page.getByText(hint)).toBeVisible();
    }
    await expect(bench.get("key-hint")).toBeDisabled();
    await bench.get("key-close-card").tap();

    await bench.wireByTaps("socket-3", "socket-4");
    await bench.check();
    await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();
  });

  test("a mistake at one core, made on the board's face with two stations side by side, is danger at its place", async ({
    page,
  }) => {
    const bench = new BenchScreen(page);
    await startAsGuest(bench, "extend-a-ring");
    await bench.matchAsFound();
    await bench.makeDead();
    await bench.get("step-wire").tap();
    await bench.takeCable(2.5);
    await bench.wireByTaps("socket-3", "socket-4");
    await bench.expectCable("socket-3.c~socket-4.a");

    await bench.get("key-face").tap();
    await bench.openOnFace("socket-3", "socket-4");
    const box = async (name: string) =>
      (await page.getByRole("region", { name, exact: true }).boundingBox())!;
    const [left, right] = [await box("Socket outlet 3"), await box("Socket outlet 4")];
    expect(right.x).toBeGreaterThanOrEqual(left.x + left.width);
    expect(right.x + right.width).toBeLessThanOrEqual(800);

    for (const contact of ["socket-4.a.L", "socket-4.a.N"]) {
      await bench.get(`contact-${contact}`).tap();
      await bench.get("key-pull-lead").tap();
      await expect(bench.get("key-pull-lead")).toBeHidden();
    }
    // By drag the one, by taps the other.
    const centre = async (contact: string) => {
      const found = (await bench.get(`contact-${contact}`).boundingBox())!;
      return { x: found.x + found.width / 2, y: found.y + found.height / 2 };
    };
    const [from, to] = [await centre("socket-3.c.L"), await centre("socket-4.a.N")];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 8 });
    await page.mouse.up();
    await bench.get("contact-socket-3.c.N").tap();
    await bench.get("contact-socket-4.a.L").tap();
    await expect(bench.get("contact-socket-4.a.L")).toHaveAccessibleName(/leads to socket outlet 3 c n/i);
    await expect(bench.get("contact-socket-4.a.N")).toHaveAccessibleName(/leads to socket outlet 3 c l/i);
    await bench.get("key-face").tap();
    await bench.check();
    await bench.get("finding-polarity").tap();
    const note = bench.get("note-finding-polarity");
    await expect(note).toContainText(/socket outlet 4/i);
    await expect(page.getByRole("heading", { name: /^Danger/ })).toBeVisible();
    await bench.get("key-show-place").tap();
    await bench.get("key-close-card").tap();
  });
});
