import { describe, expect, it } from "vitest";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import { byId, panels, showBench } from "./show-bench.ts";
import { sampleView } from "./views.ts";

const [small, large] = panels;
const on = (id: string) => document.querySelector(`[data-testid="${id}"]`);
const verdictWords = /You named it|not where|not what is wrong|You did not name it|points/;

describe("a fault hunt", () => {
  it("names what is wrong, in which core and where, once all of it is said; right or wrong is not said", async () => {
    const { screen, sent } = await showBench({ ...small, view: sampleView("test") });
    await screen.getByTestId("meter-tab-fault").click();
    const panel = screen.getByTestId("hunt-panel");
    await expect.element(panel).toHaveTextContent("Faults hidden in this circuit: 2");
    await expect.element(panel).toHaveTextContent("Whether it is right is said after you hand in");
    await screen.getByTestId("hunt-kind-crossed-cores").click();
    await expect.element(screen.getByTestId("hunt-name")).toBeDisabled();
    await screen.getByTestId("hunt-core-L").click();
    await screen.getByTestId("hunt-place-socket-2.b~way-1.b").click();
    // Two cores are crossed: with one alone it is not named yet.
    await expect.element(screen.getByTestId("hunt-name")).toBeDisabled();
    await screen.getByTestId("hunt-core-E").click();
    await screen.getByTestId("hunt-name").click();
    const name = { kind: "crossed-cores", place: "socket-2.b~way-1.b", cores: ["L", "E"] };
    expect(sent).toEqual([{ name: "name-fault", command: { name } }]);
    expect(panel.element().textContent).not.toMatch(verdictWords);
  });

  it("takes the place that is touched on the plan, and takes back what was named", async () => {
    const { screen, sent } = await showBench({ ...large, view: sampleView("test") });
    await screen.getByTestId("meter-tab-fault").click();
    await screen.getByTestId("hunt-kind-missing-link").click();
    await screen.getByTestId("station-socket-2").click();
    await expect.element(screen.getByTestId("hunt-place-socket-2")).toHaveAttribute("aria-pressed", "true");
    await screen.getByTestId("hunt-kind-open-core").click();
    // A station is no place for a broken core.
    expect(on("hunt-place-socket-2")).toBeNull();
    await screen.getByTestId("hunt-take-back").click();
    const name = { kind: "open-core", place: "socket-1.b~socket-2.a", cores: ["N"] };
    expect(sent).toEqual([{ name: "name-fault", command: { name, isTakenBack: true } }]);
  });

  it("shows after the hand-in of practice what was hidden, what was named rightly, and where it was on the plan", async () => {
    const { screen } = await showBench({ ...small, view: sampleView("hunt-outcome") });
    const outcome = screen.getByTestId("hunt-outcome");
    await expect.element(outcome).toHaveTextContent("Points: 3 of 7");
    await expect.element(outcome).toHaveTextContent("You named it.");
    await expect.element(outcome).toHaveTextContent("You did not name it.");
    await expect.element(outcome).toHaveTextContent("A reading on your record showed it");
    await expect.element(outcome).toHaveTextContent("You did not test in the right order");
    await screen.getByTestId("hunt-show-1").click();
    await expect.element(screen.getByTestId("work-plan")).toBeVisible();
  });

  it("says nothing of it after an assessed hand-in, until the decision is released", async () => {
    const view = sampleView("hunt-outcome");
    const { hunt, ...work } = view.attempt!;
    const { result, ...named } = hunt!;
    const silent: AttemptView = { ...work, mode: "assessed", verdict: null, hunt: named };
    const { screen, show } = await showBench({ ...small, view: { ...view, attempt: silent } });
    await expect.element(screen.getByTestId("key-own-work")).toBeVisible();
    expect(on("hunt-outcome")).toBeNull();
    expect(document.body.textContent).not.toMatch(verdictWords);
    const outcome = { outcome: "not-yet", says: "", criteria: [], isSeen: true } as const;
    const released: AttemptView = { ...silent, outcome: { ...outcome, criteria: [] }, hunt: hunt! };
    await show({ view: { ...view, attempt: released } });
    await expect.element(screen.getByTestId("hunt-outcome")).toHaveTextContent("Points: 3 of 7");
    // At the next sign-in it stands with the decision, and there is no plan of it to show any more.
    const again = {
      ...sampleView("outcomes"),
      outcomes: [
        {
          attempt: "a",
          scenario: "first-spur",
          releasedWallMs: 0,
          outcome: { ...outcome, criteria: [] },
          hunt: result!,
        },
      ],
    };
    await show({ view: again });
    byId("key-outcomes").click();
    await expect.element(screen.getByTestId("hunt-outcome")).toHaveTextContent("Points: 3 of 7");
    expect(on("hunt-show-0")).toBeNull();
  });
});
