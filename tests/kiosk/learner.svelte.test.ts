import { describe, expect, it } from "vitest";
import { userEvent } from "vitest/browser";
import { cableId, entryId, stationId } from "../../shared/board/ids.ts";
import { taskLines } from "../../shared/text/task-lines.ts";
import type { AttemptView, FindingView } from "../../shared/protocol/bench-view.ts";
import { workshopFace } from "./faces.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { attempt, bench, ringOpen, sampleView, verdict, viewNames } from "./views.ts";

const on = (id: string) => document.querySelector(`[data-testid="${id}"]`);

describe("the caution", () => {
  it.each(viewNames)("is in view on the screen %s", async (name) => {
    for (const { width, height } of panels) {
      const { screen } = await showBench({ view: sampleView(name), width, height });
      await expect.element(screen.getByTestId("caution-floor")).toBeInViewport();
      await expect.element(screen.getByTestId("caution-floor")).toHaveTextContent("Real circuits can kill");
    }
  });

  it("stands in full at the start of an attempt: extra-low voltage, prove dead, no proof, competent people", async () => {
    const { sent, screen } = await showBench({ view: sampleView("caution") });
    for (const part of [/extra-low voltage/, /prove dead/, /no proof/, /competent people/, /local code/])
      await expect.element(screen.getByTestId("screen-caution")).toHaveTextContent(part);
    await screen.getByTestId("key-accept-caution").click();
    expect(sent).toEqual([{ name: "accept-caution", command: {} }]);
  });
});

describe("signing in", () => {
  it("is by a name, as a guest, or by a badge typed on the keyboard in the page", async () => {
    const { sent, screen } = await showBench({ view: sampleView("sign-in") });
    await screen.getByTestId("learner-demo-1").click();
    await screen.getByTestId("key-guest").click();
    await screen.getByTestId("key-badge").click();
    for (const letter of ["A", "7"]) await screen.getByRole("button", { name: letter, exact: true }).click();
    await screen.getByTestId("key-enter").click();
    expect(sent.map(({ command }) => command)).toEqual([
      { by: "name", learner: "demo-1" },
      { by: "guest" },
      { by: "badge", badge: "A7" },
    ]);
  });

  it("takes what a badge reader types, whatever has the focus", async () => {
    const { sent, screen } = await showBench({ view: sampleView("sign-in") });
    byId("key-guest").focus();
    await userEvent.keyboard("SW-07{Enter}");
    await expect.poll(() => sent).toEqual([{ name: "sign-in", command: { by: "badge", badge: "SW-07" } }]);
    await expect.element(screen.getByTestId("screen-sign-in")).toBeVisible();
  });

  it("gives a key its own act while no badge is being read", async () => {
    const { sent } = await showBench({ view: sampleView("sign-in") });
    byId("key-guest").focus();
    await userEvent.keyboard("{Enter}");
    await expect.poll(() => sent).toEqual([{ name: "sign-in", command: { by: "guest" } }]);
  });

  it("keeps each row of letters together on a panel on its end, every key 10 mm or more", async () => {
    const { screen } = await showBench({ view: sampleView("sign-in"), width: 480, height: 800 });
    await screen.getByTestId("key-badge").click();
    const keyOf = (letter: string) =>
      screen.getByRole("button", { name: letter, exact: true }).element().getBoundingClientRect();
    const rows = ["1234567890", "QWERTYUIOP", "ASDFGHJKL-", "ZXCVBNM._"].map((row) => [...row].map(keyOf));
    const tops = rows.map((row) => [...new Set(row.map(({ top }) => Math.round(top)))]);
    // No key of a row stands between those of another.
    expect(tops.flat()).toEqual(tops.flat().toSorted((a, b) => a - b));
    const mmPx = 480 / 91.4;
    for (const { width, height } of rows.flat())
      expect(Math.min(width, height)).toBeGreaterThan(10 * mmPx - 1);
  });

  it.each([
    { width: 800, height: 480 },
    { width: 480, height: 800 },
  ])("moves no key and covers none for a wrong badge, at $width by $height", async ({ width, height }) => {
    const answer = { ok: false, code: "unknown-badge", facts: {} } as const;
    const { screen } = await showBench({ view: sampleView("sign-in"), width, height, answer });
    await screen.getByTestId("key-badge").click();
    const boxes = () =>
      [...byId("keyboard").querySelectorAll("button")].map((key) => {
        const { left, top, right, bottom } = key.getBoundingClientRect();
        const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
        return { left, top, right, bottom, isOnTop: key.contains(hit) };
      });
    const before = boxes();
    expect(before.every(({ isOnTop }) => isOnTop)).toBe(true);
    await userEvent.keyboard("SW-99{Enter}");
    await expect.element(screen.getByTestId("refusal")).toBeVisible();
    expect(boxes()).toEqual(before);
  });

  it("says that somebody's work is kept where the bench was locked, and not where none is", async () => {
    const { screen, show } = await showBench({ view: bench({ person: null, isWorkKept: true }) });
    await expect.element(screen.getByTestId("work-kept")).toHaveTextContent("Your work is kept");
    await show({ view: bench({ person: null }) });
    expect(on("work-kept")).toBeNull();
  });

  it("finds nothing open that the one before had open", async () => {
    const { screen, show } = await showBench({ view: sampleView("hand-in") });
    await screen.getByTestId("key-hand-in").click();
    expect(on("dialog-hand-in")).not.toBeNull();
    await show({ view: bench({ person: null, isWorkKept: true }) });
    await show({ view: sampleView("hand-in") });
    await expect.element(screen.getByTestId("key-hand-in")).toBeVisible();
    expect(on("dialog-hand-in")).toBeNull();
  });

  it("says why where the server refuses", async () => {
    const { screen } = await showBench({
      view: sampleView("sign-in"),
      answer: { ok: false, code: "unknown-learner", facts: {} },
    });
    await screen.getByTestId("learner-demo-1").click();
    await expect.element(screen.getByTestId("refusal")).toHaveTextContent("does not know that name");
  });
});

describe("the steps along the edge", () => {
  it.each([
    { language: "en", isLarge: false },
    { language: "en", isLarge: true },
    { language: "pl", isLarge: true },
  ] as const)("have their marks beside their words, never on them: $language $isLarge", async (more) => {
    const steps = sampleView("wire").attempt!.steps.map(({ step }, i) => ({
      step,
      state: step === "wire" ? ("now" as const) : i % 2 === 0 ? ("done" as const) : ("locked" as const),
    }));
    for (const turn of [
      steps,
      steps.map((one) => ({ ...one, state: one.state === "now" ? one.state : ("done" as const) })),
    ]) {
      await showBench({ view: bench({ ...more, attempt: attempt({ steps: turn }) }) });
      for (const mark of document.querySelectorAll("nav svg")) {
        const at = mark.getBoundingClientRect();
        const range = document.createRange();
        range.selectNodeContents(mark.parentElement!.querySelector(".name")!);
        for (const line of range.getClientRects()) {
          // Letters take the middle of a line's box.
          const isBeside =
            at.right <= line.left || at.left >= line.right || at.bottom <= line.top + line.height * 0.2;
          expect(isBeside, range.toString()).toBe(true);
        }
      }
    }
  });
});

describe("choosing a task", () => {
  it("starts it in the mode that is chosen", async () => {
    const { sent, screen } = await showBench({ view: sampleView("scenarios") });
    await screen.getByTestId("scenario-first-spur").click();
    await screen.getByTestId("key-assessed").click();
    expect(sent).toEqual([{ name: "start-attempt", command: { scenario: "first-spur", mode: "assessed" } }]);
  });

  it("is closed to a task the board cannot do, with what it lacks", async () => {
    const { screen } = await showBench({ view: sampleView("scenarios") });
    await screen.getByTestId("scenario-wall-lights").click();
    await expect.element(screen.getByTestId("key-practice")).toBeDisabled();
    await expect
      .element(screen.getByTestId("screen-scenarios"))
      .toHaveTextContent("Fused connection unit (FCU): 2 more");
  });

  it("ticks what this learner has met, in words too, and begins with the easiest they have not", async () => {
    const cards = sampleView("scenarios").scenarios.filter(({ lacks }) => lacks.length === 0);
    const [first, harder] = [cards[0]!, { ...cards[0]!, id: "harder", level: 2 }];
    const scenarios = [first, harder];
    const { screen, show } = await showBench({
      view: bench({ scenarios, metScenarios: [first.id] }),
    });
    await expect
      .element(screen.getByTestId(`scenario-${first.id}`))
      .toHaveAccessibleName(/You have met this/);
    await expect.element(screen.getByTestId(`met-${first.id}`)).toBeInViewport();
    await expect.element(screen.getByTestId("scenario-harder")).not.toHaveAccessibleName(/You have met this/);
    expect(byId("scenario-harder").closest("li")!.contains(byId("key-start-here"))).toBe(true);
    await expect.element(screen.getByTestId("key-start-here")).toHaveTextContent("Go on here");
    await show({ view: bench({ scenarios, metScenarios: scenarios.map(({ id }) => id) }) });
    expect(byId(`scenario-${first.id}`).closest("li")!.contains(byId("key-start-here"))).toBe(true);
    await show({ view: bench({ scenarios }) });
    expect(on(`met-${first.id}`)).toBeNull();
    await expect.element(screen.getByTestId("key-start-here")).toHaveTextContent("Start here");
  });

  it("is closed to practice at what was handed in for assessment, until the result is released", async () => {
    const view = { ...sampleView("scenarios"), practiceHeld: ["first-spur"] };
    const { screen } = await showBench({ view });
    await screen.getByTestId("scenario-first-spur").click();
    await expect.element(screen.getByTestId("key-practice")).toBeDisabled();
    await expect.element(screen.getByTestId("key-practice")).toHaveTextContent("your result is released");
    await expect.element(screen.getByTestId("key-assessed")).toBeEnabled();
  });

  it("lets a guest practise only", async () => {
    const { screen } = await showBench({ view: bench({ person: { name: "", isGuest: true } }) });
    await screen.getByTestId("scenario-first-spur").click();
    await expect.element(screen.getByTestId("key-assessed")).toBeDisabled();
    await expect.element(screen.getByTestId("key-practice")).toBeEnabled();
  });
});

describe("a newcomer", () => {
  it("finds the task to start with marked, and reads what it asks before choosing it", async () => {
    const { screen } = await showBench({ view: sampleView("scenarios") });
    await expect.element(screen.getByTestId("key-start-here")).toHaveTextContent("Start here");
    const card = byId("scenario-first-spur").closest("li");
    expect(card?.contains(byId("key-start-here"))).toBe(true);
    expect(card?.textContent).toContain("one spur");
    expect(document.body.textContent?.match(/Start here/g)).toHaveLength(1);
    await screen.getByTestId("scenario-first-spur").click();
    const task = sampleView("wire").attempt?.scenario.task.en ?? "";
    const { opening, asks } = taskLines(task);
    await expect.element(screen.getByTestId("screen-scenarios")).toHaveTextContent(opening);
    // The number of each ask is that of its place in the list.
    const listed = [...document.querySelectorAll<HTMLLIElement>("ol > li")];
    expect(listed.map(({ value, textContent }) => ({ number: value, text: textContent }))).toEqual(asks);
  });

  it("begins the first task with one touch, in practice", async () => {
    const { sent, screen } = await showBench({ view: sampleView("scenarios") });
    await screen.getByTestId("key-start-here").click();
    expect(sent).toEqual([{ name: "start-attempt", command: { scenario: "first-spur", mode: "practice" } }]);
  });

  it("is asked before somebody's work that waits for a check is ended", async () => {
    const { sent, screen } = await showBench({
      view: sampleView("scenarios"),
      answer: { ok: false, code: "others-work-waiting", facts: {} },
    });
    await screen.getByTestId("scenario-first-spur").click();
    await screen.getByTestId("key-practice").click();
    await screen.getByTestId("key-end-waiting").click();
    const command = { scenario: "first-spur", mode: "practice" };
    expect(sent).toEqual([
      { name: "start-attempt", command },
      { name: "start-attempt", command: { ...command, endsWaiting: true } },
    ]);
  });
});

describe("the steps along the edge", () => {
  it.each([
    ["en", false],
    ["en", true],
    ["pl", false],
    ["pl", true],
  ] as const)(
    "have the tick of what is done beside its word, not on it: %s, large letters %s",
    async (language, isLarge) => {
      const first = { step: "make-dead", state: "done" } as const;
      const steps = [first, ...attempt({ step: "wire" }).steps];
      await showBench({ view: bench({ language, isLarge, attempt: attempt({ step: "wire", steps }) }) });
      const key = byId("step-make-dead");
      const tick = key.querySelector("svg path")!.getBoundingClientRect();
      const word = document.createRange();
      word.selectNodeContents(key.querySelector(".name")!);
      // Letters take the middle of their line; the tick has the width of its stroke besides.
      const strokePx = 1.5;
      const isOn = ({ left, right, top, bottom, height }: DOMRect) =>
        left < tick.right + strokePx &&
        right > tick.left - strokePx &&
        top + height * 0.15 < tick.bottom + strokePx &&
        bottom - height * 0.15 > tick.top - strokePx;
      expect([...word.getClientRects()].filter(isOn)).toEqual([]);
    },
  );
});

describe("making dead", () => {
  const deadView = sampleView("make-dead").attempt?.deadState;

  it("is acted out by touching things, in whatever order the learner takes", async () => {
    const { sent, screen } = await showBench({ view: sampleView("make-dead") });
    for (const id of ["dead-chart", "dead-breaker-2", "dead-padlock-2", "dead-proving"])
      await screen.getByTestId(id).click();
    await screen.getByTestId("dead-terminal-E").click();
    await screen.getByTestId("dead-terminal-N").click();
    expect(sent).toEqual(
      [
        { what: "chart" },
        { what: "breaker", breaker: 2 },
        { what: "padlock", breaker: 2 },
        { what: "proving-unit" },
        { what: "test", between: "N-E" },
      ].map((command) => ({ name: "dead-act", command })),
    );
  });

  it("shows what the tester reads and where, and why it does not count", async () => {
    const { screen } = await showBench({ view: sampleView("make-dead") });
    await expect.element(screen.getByTestId("dead-reading")).toHaveTextContent("0 Vbetween L-N");
    await expect.element(screen.getByTestId("dead-missed")).toHaveTextContent("not proved");
  });

  it("shows all eight steps and the key that goes on at once, on the smallest panel", async () => {
    const view = sampleView("make-dead");
    const dead = view.attempt!.dead.map((one) => ({ ...one, isDone: true }));
    const { missed: _, ...rest } = deadView!;
    const deadState = { ...rest, reading: { at: "proving-unit" as const, voltageV: 230 } };
    const { screen } = await showBench({
      view: { ...view, attempt: { ...view.attempt!, dead, deadState } },
    });
    await expect.element(screen.getByTestId("key-dead-next")).toBeInViewport({ ratio: 1 });
    for (const part of document.querySelectorAll("[data-testid='screen-make-dead'] .scroll"))
      expect(part.scrollHeight).toBeLessThanOrEqual(part.clientHeight + 1);
  });

  it("keeps no list in assessed work: the learner says that it is dead", async () => {
    const { missed: _, ...told } = deadView!;
    const { sent, screen } = await showBench({
      view: bench({ attempt: attempt({ mode: "assessed", step: "make-dead", deadState: told }) }),
    });
    expect(document.querySelectorAll("[data-testid='screen-make-dead'] li")).toHaveLength(0);
    await screen.getByTestId("key-declare-dead").click();
    expect(sent).toEqual([{ name: "declare-dead", command: {} }]);
  });
});

describe("leads that were there", () => {
  it("of somebody before are cleared by the key in the line that asks for it", async () => {
    const view = bench({
      attempt: attempt({ step: "wire", say: { key: "say.clear-board", facts: { cableCount: 2 } } }),
    });
    const { sent, screen } = await showBench({ view });
    expect(on("key-found-list")).toBeNull();
    await screen.getByTestId("key-clear-now").click();
    await screen.getByTestId("key-yes").click();
    expect(sent).toEqual([{ name: "pull", command: { what: "all" } }]);
  });

  it("are set right before the work begins: the line that says so leads to their list", async () => {
    const view = bench({
      attempt: attempt({
        step: "make-dead",
        say: { key: "say.as-found", facts: { done: 0, total: 1 } },
        asFound: [{ cable: cableId(entryId("socket-1", "a"), entryId("way-1", "a")), isIn: false }],
      }),
    });
    const { sent, screen } = await showBench({ view });
    await expect.element(screen.getByTestId("say")).toHaveTextContent("Cables in: 0 of 1.");
    await screen.getByTestId("key-found-list").click();
    await screen.getByTestId("key-match").click();
    expect(sent).toEqual([{ name: "match-as-found", command: {} }]);
  });
});

describe("the plan worksheet", () => {
  it("asks for a fuse by the name of its FCU, and says when the legs of a ring are shown", async () => {
    const plan = {
      questions: [
        { question: "fuseRatingA", station: stationId("fcu-1"), choices: [3, 5, 13], answer: 13 },
        { question: "secondFuseRatingA", station: stationId("fcu-2"), choices: [3, 5, 13] },
      ],
      bars: [
        { name: "Iz", currentA: 27 },
        { name: "least", currentA: 20 },
      ],
    } satisfies AttemptView["plan"];
    const onPlan = (more: Partial<AttemptView["plan"]>) =>
      bench({ board: workshopFace, attempt: attempt({ step: "plan", plan: { ...plan, ...more } }) });
    const { sent, screen, show } = await showBench({ view: onPlan({ areLegsLater: true }) });
    await expect
      .element(screen.getByTestId("question-fuseRatingA"))
      .toHaveTextContent("Which fuse at FCU 1?");
    await expect.element(screen.getByTestId("question-secondFuseRatingA")).toHaveTextContent("at FCU 2?");
    await screen.getByTestId("key-answer-3").click();
    expect(sent).toEqual([{ name: "answer-plan", command: { question: "secondFuseRatingA", answer: 3 } }]);
    await expect.element(screen.getByTestId("legs-later")).toHaveTextContent("once the ring is wired");
    await show({
      view: onPlan({ bars: [{ name: "leg", currentA: 7.5 }, { name: "leg", currentA: 12 }, ...plan.bars] }),
    });
    expect(on("legs-later")).toBeNull();
    await expect
      .element(
        screen.getByRole("img", { name: /Ring leg 1 7.5 A, Ring leg 2 12 A, Iz cable 27 A, Least Iz 20 A/ }),
      )
      .toBeVisible();
  });

  it("has the table of what cables may carry at hand, for the ways they run in this house", async () => {
    const { screen } = await showBench({ view: sampleView("plan") });
    const table = screen.getByTestId("cable-table");
    // BS 7671 Table 4D5, method C: 20 A for 1.5 mm² and 27 A for 2.5 mm².
    await expect.element(table.getByRole("row", { name: "1.5 20 A" })).toBeInTheDocument();
    await expect.element(table.getByRole("row", { name: "2.5 27 A" })).toBeInTheDocument();
    await expect.element(table).toHaveTextContent("clipped to a surface or in plaster");
    await expect.element(table).toHaveTextContent("use a current copy");
  });

  it("takes a choice and a typed number, with a point", async () => {
    const { sent, screen } = await showBench({ view: sampleView("plan-number") });
    for (const key of ["1", "3", ".", ".", "5"]) await screen.getByTestId(`key-digit-${key}`).click();
    await screen.getByTestId("key-enter-number").click();
    await screen.getByTestId("question-deviceRatingA").click();
    await screen.getByTestId("key-answer-16").click();
    expect(sent.map(({ command }) => command)).toEqual([
      { question: "designCurrentA", answer: 13.5 },
      { question: "deviceRatingA", answer: 16 },
    ]);
  });

  it("says once, for who hears the screen, how the last answer was judged, and keeps the keyboard's place", async () => {
    const view = sampleView("plan-number");
    const { screen, show } = await showBench({ view });
    await screen.getByTestId("key-digit-9").click();
    await screen.getByTestId("key-enter-number").click();
    const said = () =>
      byId("screen-plan").querySelector<HTMLElement>(".plan > [aria-live]")!.textContent ?? "";
    expect(said()).toBe("");
    const plan = view.attempt!.plan;
    const questions = plan.questions.map((one) =>
      one.question === "designCurrentA"
        ? {
            ...one,
            answer: 9,
            result: {
              isRight: true,
              reason: { key: "plan.reason.designCurrentA", facts: { designCurrentA: 9 } },
            },
          }
        : one,
    );
    await show({ view: { ...view, attempt: { ...view.attempt!, plan: { ...plan, questions } } } });
    await expect.poll(said).toBe("Right. The loads together take 9 A.");
    await expect.element(screen.getByTestId("question-deviceRatingA")).toHaveFocus();
  });

  it("asks for the size of what comes before the fuse where the task has a fused connection unit", async () => {
    const view = sampleView("plan");
    const { screen, show } = await showBench({ view });
    await expect.element(screen.getByTestId("question-csaMm2")).toHaveTextContent("Which cable size?");
    const { scenario } = view.attempt!;
    const [first] = scenario.stations;
    const stations = [...scenario.stations, { ...first!, kind: "fcu" as const }];
    await show({ view: { ...view, attempt: { ...view.attempt!, scenario: { ...scenario, stations } } } });
    await expect
      .element(screen.getByTestId("question-csaMm2"))
      .toHaveTextContent("Which size for the cable that feeds the FCU?");
  });

  it("compares Ib, In and Iz in bars with their values written", async () => {
    const { screen } = await showBench({ view: sampleView("plan") });
    const bars = screen.getByRole("img", { name: /Currents to compare/ });
    await expect.element(bars).toHaveAccessibleName(/Ib load 13.1 A, In device 32 A, Iz cable 27 A/);
  });
});

describe("findings", () => {
  it.each(panels)(
    "on a $panel panel read why, the bars and the remedy, then where and what, and the reference last",
    async ({ width, height }) => {
      const { screen } = await showBench({ view: sampleView("ring-fault"), width, height });
      if (width === 800) await screen.getByTestId("key-notes").click();
      await screen.getByTestId("finding-ring-open").click();
      const text = byId("note-finding-ring-open").textContent ?? "";
      const at = [
        ringOpen.why,
        "32 A",
        ringOpen.remedy,
        ringOpen.where,
        ringOpen.what,
        ringOpen.reference,
      ].map((part) => text.indexOf(part));
      expect(at.every((place, i) => place >= 0 && place > (at[i - 1] ?? -1))).toBe(true);
      await expect.element(screen.getByRole("heading", { name: /^Put right · / })).toBeVisible();
    },
  );

  it("lead to their place", async () => {
    const { screen } = await showBench({ view: sampleView("ring-fault"), width: 1280, height: 800 });
    await screen.getByTestId("finding-ring-open").click();
    await screen.getByTestId("key-show-place").click();
    await expect.element(screen.getByTestId("key-pull-cable")).toBeVisible();
  });

  it("leave the place they show to be seen on a small panel, and are one touch away from there", async () => {
    const { screen } = await showBench({ view: sampleView("ring-fault") });
    await screen.getByTestId("key-notes").click();
    await screen.getByTestId("finding-ring-open").click();
    await screen.getByTestId("key-show-place").click();
    expect(on("key-pull-cable")).toBeNull();
    const plan = byId("screen-wire").querySelector("section")!.getBoundingClientRect();
    const strip = byId("key-back-to-note").parentElement!.getBoundingClientRect();
    expect(strip.height).toBeLessThan(plan.height / 3);
    await screen.getByTestId("key-back-to-note").click();
    await expect.element(screen.getByTestId("note-finding-ring-open")).toBeVisible();
    await screen.getByTestId("key-show-place").click();
    await screen.getByTestId("key-open-card").click();
    await expect.element(screen.getByTestId("key-pull-cable")).toBeVisible();
  });

  it("go on from note to note, round again after the last", async () => {
    const again = { ...ringOpen, id: "spur-cable/small/x", title: "Spur cable too weak" };
    const faulty = sampleView("ring-fault");
    const found = faulty.attempt!.verdict!;
    const view = {
      ...faulty,
      attempt: { ...faulty.attempt!, verdict: { ...found, findings: [ringOpen, again] } },
    };
    const { screen } = await showBench({ view });
    await screen.getByTestId("key-notes").click();
    await screen.getByTestId("finding-ring-open").click();
    await expect.element(screen.getByTestId("key-next-note")).toHaveTextContent("1 of 2");
    await screen.getByTestId("key-next-note").click();
    await expect.element(screen.getByTestId("note-finding-spur-cable")).toBeVisible();
    await screen.getByTestId("key-next-note").click();
    await expect.element(screen.getByTestId("note-finding-ring-open")).toBeVisible();
  });

  it.each([
    { board: "simulated", steps: "pull and plug", isOffered: true },
    { board: "real", steps: "pull and plug", isOffered: false },
    { board: "real", steps: "declare", isOffered: true },
    { board: "simulated", steps: "declare", isOffered: false, isCurrent: false },
  ])("offer a mend on a $board board by $steps: $isOffered", async (one) => {
    const { board, steps, isOffered, isCurrent = true } = one;
    const faulty = sampleView("ring-fault");
    const cable = faulty.attempt!.cables[0]!;
    const mend: NonNullable<FindingView["mend"]> =
      steps === "declare"
        ? {
            said: { key: "mend.csaMm2", facts: { csaMm2: 2.5 } },
            steps: [{ act: "declare", subject: cable.id, key: "csaMm2", value: 2.5 }],
          }
        : {
            said: { key: "mend.cores", facts: { cable: cable.id } },
            steps: [
              { act: "pull", cable: cable.id },
              { act: "plug-cable", entryA: cable.from, entryB: cable.to, csaMm2: 2.5 },
            ],
          };
    const found = faulty.attempt!.verdict!;
    const view = {
      ...faulty,
      board: { ...faulty.board!, isSimulated: board === "simulated" },
      attempt: {
        ...faulty.attempt!,
        verdict: { ...found, isCurrent, findings: [{ ...ringOpen, mend, followCount: 3 }] },
      },
    };
    const { sent, screen } = await showBench({ view });
    await screen.getByTestId("key-notes").click();
    await screen.getByTestId("finding-ring-open").click();
    if (isCurrent)
      await expect.element(screen.getByTestId("follow")).toHaveTextContent("3 more when this is mended");
    if (!isOffered) {
      expect(on("key-mend")).toBeNull();
      return;
    }
    await screen.getByTestId("key-mend").click();
    await expect.poll(() => on("note-finding-ring-open")).toBeNull();
    expect(sent.map(({ name }) => name)).toEqual(mend.steps.map(({ act }) => act));
  });

  it("keep the cable they are about in sight beside them on a small panel, and their mend in one screen", async () => {
    for (const [width, height] of [
      [800, 480],
      [480, 800],
    ] as const) {
      const faulty = sampleView("ring-fault");
      const found = faulty.attempt!.verdict!;
      const mend = {
        said: { key: "mend.csaMm2", facts: { csaMm2: 2.5 } },
        steps: [
          {
            act: "declare" as const,
            subject: faulty.attempt!.cables[1]!.id,
            key: "csaMm2" as const,
            value: 2.5,
          },
        ],
      };
      const view = {
        ...faulty,
        attempt: { ...faulty.attempt!, verdict: { ...found, findings: [{ ...ringOpen, mend }] } },
      };
      const { screen } = await showBench({ view, width, height });
      await screen.getByTestId("key-notes").click();
      await screen.getByTestId("finding-ring-open").click();
      await expect.element(screen.getByTestId("key-mend")).toBeVisible();
      const note = byId("note-finding-ring-open").closest("aside")!.getBoundingClientRect();
      const key = byId("key-mend").getBoundingClientRect();
      expect(key.bottom).toBeLessThanOrEqual(note.bottom);
      for (const id of ["cable-socket-1.b~socket-2.a", "station-socket-1", "station-socket-2"]) {
        const box = byId(id).getBoundingClientRect();
        const isApart = box.right <= note.left || box.left >= note.right || box.bottom <= note.top;
        expect(isApart, `${id} at ${width}x${height}`).toBe(true);
      }
    }
  });

  it("say their title once for a row of the same kind, and to who hears the screen with each", async () => {
    const twin = { ...ringOpen, id: "ring-open/open/second", where: "Look at somewhere else." };
    const faulty = sampleView("ring-fault");
    const found = faulty.attempt!.verdict!;
    const view = {
      ...faulty,
      attempt: { ...faulty.attempt!, verdict: { ...found, findings: [ringOpen, twin] } },
    };
    const { screen } = await showBench({ view, width: 1280, height: 800 });
    const second = screen.getByTestId("finding-ring-open").nth(1);
    await expect.element(second).toHaveAccessibleName(/Put right · .* Look at somewhere else\./);
    const title = second.element().querySelector("b")!.getBoundingClientRect();
    expect(title.width).toBeLessThanOrEqual(1);
  });

  it("name few of many places, and all of them by a touch", async () => {
    const inFull = { where: "Look at A, B, C, D and E.", what: "Five of them: A, B, C, D and E." };
    const many = { ...ringOpen, where: "Look at A, B, C and 2 more.", what: "Five of them.", inFull };
    const faulty = sampleView("ring-fault");
    const found = faulty.attempt!.verdict!;
    const view = {
      ...faulty,
      attempt: { ...faulty.attempt!, verdict: { ...found, findings: [many] } },
    };
    const { screen } = await showBench({ view, width: 1280, height: 800 });
    await expect.element(screen.getByTestId("finding-ring-open")).toHaveTextContent(many.where);
    await screen.getByTestId("finding-ring-open").click();
    const note = screen.getByTestId("note-finding-ring-open");
    await expect.element(note).toHaveTextContent(many.where);
    await screen.getByTestId("key-in-full").click();
    for (const sentence of Object.values(inFull)) await expect.element(note).toHaveTextContent(sentence);
    await screen.getByTestId("key-in-full").click();
    await expect.element(note).toHaveTextContent(many.where);
  });

  it("are announced with their weight in words", async () => {
    const { screen, show } = await showBench({ view: sampleView("wire") });
    await show({ view: sampleView("ring-fault") });
    await expect
      .element(screen.getByTestId("live"))
      .toHaveTextContent(
        /2 to look at.*Danger: socket outlet 3 has no earth.*Put right: the ring is open in L/,
      );
  });

  it("mark the plate and the cable they are about, in words too", async () => {
    const { screen } = await showBench({ view: sampleView("ring-fault") });
    await expect.element(screen.getByTestId("station-socket-3")).toHaveAccessibleName(/Danger/);
    await expect.element(screen.getByTestId("cable-socket-1.b~socket-2.a")).toHaveAccessibleName(/Put right/);
  });

  it("are no longer marked on the plan once the board has changed, and the note says so", async () => {
    const { screen } = await showBench({
      view: bench({
        attempt: attempt({
          cables: sampleView("ring").attempt?.cables ?? [],
          verdict: verdict({ findings: [ringOpen], isCurrent: false }),
        }),
      }),
      width: 1280,
      height: 800,
    });
    await expect
      .element(screen.getByTestId("cable-socket-1.b~socket-2.a"))
      .not.toHaveAccessibleName(/Put right/);
    await expect.element(screen.getByTestId("screen-wire")).toHaveTextContent("has changed since this check");
  });

  it("and hints are asked for with a key", async () => {
    const { sent, screen } = await showBench({ view: sampleView("ring") });
    await screen.getByTestId("key-check").click();
    await screen.getByTestId("key-hint").click();
    expect(sent.map(({ name }) => name)).toEqual(["ask-verdict", "ask-hint"]);
  });
});

describe("handing in", () => {
  it("asks once more before it is done", async () => {
    const { sent, screen } = await showBench({ view: sampleView("hand-in") });
    await screen.getByTestId("key-hand-in").click();
    expect(sent).toEqual([]);
    await screen.getByTestId("key-yes").click();
    expect(sent).toEqual([{ name: "hand-in", command: {} }]);
  });

  it("shows each requirement, and a touch goes to its place", async () => {
    const { sent, screen, show } = await showBench({ view: sampleView("hand-in"), width: 1280, height: 800 });
    await expect.element(screen.getByTestId("requirement-0")).toHaveTextContent("met");
    await expect.element(screen.getByTestId("requirement-1")).toHaveTextContent("not yet");
    await screen.getByTestId("requirement-1").click();
    expect(sent).toEqual([{ name: "go-to-step", command: { step: "wire" } }]);
    await show({ view: sampleView("ring") });
    await expect.element(screen.getByRole("heading", { name: "Way 1" })).toBeVisible();
  });

  it("names few of many places asked for, and all of them by a touch", async () => {
    const view = sampleView("hand-in");
    const shown = view.attempt!.verdict!;
    const [short, inFull] = ["Power reaches A, B, C and 2 more.", "Power reaches A, B, C, D and E."];
    const requirements = [{ text: short, inFull, answer: "met" as const, places: [] }];
    const { screen } = await showBench({
      view: { ...view, attempt: { ...view.attempt!, verdict: { ...shown, requirements } } },
    });
    await expect.element(screen.getByTestId("requirement-0")).toHaveTextContent(short);
    await screen.getByTestId("key-in-full-0").click();
    await expect.element(screen.getByTestId("requirement-0")).toHaveTextContent(inFull);
  });

  it("shows the place of a requirement that is met, and where a cable that is missing would begin", async () => {
    const view = sampleView("hand-in");
    const places = [
      { kind: "station", id: "socket-3" },
      { kind: "cable", id: "socket-1.a~way-1.b" },
    ] as const;
    const shown = view.attempt?.verdict;
    if (!view.attempt || !shown) throw new Error("no verdict on the sample");
    const requirements = places.map((place, i) => ({
      text: `Requirement ${i}`,
      answer: i === 0 ? ("met" as const) : ("not-yet" as const),
      places: [place],
    }));
    const asked = { ...view, attempt: { ...view.attempt, verdict: { ...shown, requirements } } };
    const { screen, show } = await showBench({ view: asked, width: 1280, height: 800 });
    for (const [i, name] of ["Socket outlet 3", "Socket outlet 1"].entries()) {
      await show({ view: asked });
      await screen.getByTestId(`requirement-${i}`).click();
      await show({ view: sampleView("ring") });
      await expect.element(screen.getByRole("heading", { name })).toBeVisible();
    }
  });

  it("says that the list is from a check of before, and waits where the board is not at rest", async () => {
    const view = sampleView("hand-in");
    const shown = view.attempt?.verdict;
    if (!view.attempt || !shown) throw new Error("no verdict on the sample");
    const withVerdict = (more: object) => ({
      ...view,
      attempt: { ...view.attempt!, verdict: { ...shown, ...more } },
    });
    const { screen, show } = await showBench({ view: withVerdict({ isCurrent: false }) });
    await expect.element(screen.getByTestId("old-verdict")).toBeVisible();
    await show({
      view: withVerdict({ isHeld: true, requirements: [], findings: [], proposal: "cannot-say" }),
    });
    await expect.element(screen.getByTestId("screen-hand-in")).toHaveTextContent("still settling");
    await expect.element(screen.getByTestId("screen-hand-in")).not.toHaveTextContent("cannot say");
  });

  it("opens the reasons by touch, and the plan", async () => {
    const asked = sampleView("hand-in");
    if (!asked.attempt?.verdict) throw new Error("no verdict on the sample");
    const query = { ...ringOpen, id: "spur-heavy/heavy/x", weight: "query" as const };
    const verdictNow = { ...asked.attempt.verdict, findings: [query] };
    const view = { ...asked, attempt: { ...asked.attempt, verdict: verdictNow } };
    const { screen } = await showBench({ view });
    await expect.element(screen.getByTestId("query-asks")).toHaveTextContent("asks whoever designs");
    await screen.getByTestId("finding-spur-heavy").click();
    await expect.element(screen.getByTestId("note-finding-spur-heavy")).toHaveTextContent("for a reason");
    await screen.getByTestId("key-close-card").click();
    await screen.getByTestId("key-work-plan").click();
    await expect.element(screen.getByTestId("work-plan")).toBeVisible();
  });

  it.each([
    { proposal: "met" as const, mode: "practice" as const, isTicked: true },
    { proposal: "not-yet" as const, mode: "practice" as const, isTicked: false },
    { proposal: "cannot-say" as const, mode: "practice" as const, isTicked: false },
  ])("once done has a tick where the bench proposes met, and only there: $proposal", async (one) => {
    const view = bench({
      attempt: attempt({
        mode: one.mode,
        step: "hand-in",
        status: "handed-in",
        cables: sampleView("ring").attempt?.cables ?? [],
        verdict: verdict({ proposal: one.proposal, findings: one.isTicked ? [] : [ringOpen] }),
      }),
    });
    const { screen } = await showBench({ view });
    await expect.element(screen.getByTestId("proposal")).toBeVisible();
    expect(on("met-tick") !== null).toBe(one.isTicked);
    await screen.getByTestId("key-work-plan").click();
    await expect.element(screen.getByTestId("work-plan")).toBeVisible();
    await screen.getByTestId("key-work-plan").click();
    if (one.isTicked) return;
    await screen.getByTestId("finding-ring-open").click();
    await expect.element(screen.getByTestId("note-finding-ring-open")).toBeVisible();
  });

  it("once done has no tick in assessed work", async () => {
    const view = bench({
      attempt: attempt({ mode: "assessed", step: "hand-in", status: "handed-in", verdict: null }),
    });
    const { screen } = await showBench({ view });
    await expect.element(screen.getByTestId("key-leave")).toBeVisible();
    expect(on("met-tick")).toBeNull();
  });

  it("while a check is waited for says so, keeps the list's key, and hands in all the same", async () => {
    const view = sampleView("hand-in");
    if (!view.attempt) throw new Error("no attempt on the sample");
    const waiting = { ...view, attempt: { ...view.attempt, status: "ready" as const } };
    const { sent, screen } = await showBench({ view: waiting });
    await expect.element(screen.getByTestId("waiting")).toHaveTextContent("on the waiting list");
    expect(on("key-check")).toBeNull();
    await screen.getByTestId("key-take-back").click();
    expect(sent).toEqual([{ name: "take-back", command: {} }]);
    const key = screen.getByTestId("key-hand-in");
    await expect.element(key).toBeEnabled();
    const column = key.element().parentElement!.getBoundingClientRect();
    expect(key.element().getBoundingClientRect().bottom).toBeLessThanOrEqual(column.bottom + 1);
  });

  it.each(["practice", "assessed"] as const)(
    "at the board while a check is waited for has the key that leaves the list: %s",
    async (mode) => {
      const { sent, screen } = await showBench({
        view: bench({ attempt: attempt({ mode, status: "ready" }) }),
      });
      await screen.getByTestId("key-take-back").click();
      expect(sent).toEqual([{ name: "take-back", command: {} }]);
    },
  );

  it("in assessed work offers no check and no hint, and shows no share", async () => {
    const { screen } = await showBench({ view: sampleView("assessed") });
    await expect.element(screen.getByTestId("key-ready")).toBeVisible();
    for (const id of ["key-check", "key-hint"]) expect(on(id)).toBeNull();
    expect(byId("screen-wire").textContent).not.toContain("%");
  });

  it("in assessed work ends on the words handed in and nothing more", async () => {
    const { screen } = await showBench({ view: sampleView("assessed-done") });
    await expect.element(screen.getByTestId("screen-handed-in")).toHaveTextContent("Handed in");
    expect(document.querySelectorAll("[data-testid^='finding-'],[data-testid^='requirement-']")).toHaveLength(
      0,
    );
  });
});
