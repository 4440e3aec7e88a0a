import { deadTestsOverLink } from "./dead-tests-over-link.ts";
import type { BenchLink } from "./bench-link.ts";
import type { BenchScreen } from "./bench-screen.ts";
import { pointsOfRing, ringAndSpurs } from "./ring-and-spurs.ts";

interface Go {
  bench: BenchScreen;
  link: BenchLink;
  look: (screen: string, link: BenchLink) => Promise<void>;
  /** Presses what has a test id: a finger where nothing else is said. */
  press: (id: string) => Promise<void>;
}

/** Goes to a step once the bench has opened it. */
const goTo = async ({ link, press }: Go, step: "test" | "load"): Promise<void> => {
  await link.seen(
    ({ attempt }) => attempt?.steps.some((one) => one.step === step && one.state !== "locked") ?? false,
  );
  await press(`step-${step}`);
};

/** A hunt from the first name to what was hidden, and the learner's own practice after it. */
const atHunt = async (go: Go): Promise<void> => {
  const { bench, link, look, press } = go;
  await link.does("start-attempt", { scenario: "silent-ring", mode: "practice" });
  await bench.get("key-accept-caution").tap();
  await bench.matchAsFound();
  await bench.makeDead();
  await goTo(go, "test");
  await press("meter-tab-fault");
  await press("hunt-kind-crossed-cores");
  await press("hunt-core-L");
  await press("hunt-core-N");
  await look("hunt, naming", link);
  await press("hunt-place-socket-1.b~socket-2.a");
  await press("hunt-name");
  await bench.get("hunt-named").waitFor();
  await look("hunt, named", link);
  await link.does("hand-in", {});
  await bench.get("hunt-outcome").waitFor();
  await look("hunt, what was hidden", link);
  await link.does("leave-attempt", {});
  await press("progress-open");
  await bench.get("progress-screen").waitFor();
  await look("how I am doing", link);
  await press("progress-back");
};

/** The step Load with a circuit that gets too hot: the appliances, the plot and the numbers. */
const atLoad = async (go: Go): Promise<void> => {
  const { bench, link, look, press } = go;
  await link.does("start-attempt", { scenario: "ring-and-spurs", mode: "practice" });
  await bench.get("key-accept-caution").tap();
  await bench.get("step-wire").tap();
  await link.does("pull", { what: "all" });
  await link.seen(({ attempt }) => attempt?.cables.length === 0);
  await link.plugCables(ringAndSpurs, 1.5);
  await bench.expectCableCount(ringAndSpurs.length);
  await goTo(go, "test");
  await bench.get("screen-test").waitFor();
  await deadTestsOverLink(link, pointsOfRing);
  await goTo(go, "load");
  await press("load-appliance-socket-1/kettle");
  await press("load-appliance-socket-1/heater");
  await press("load-appliance-socket-2/fan-heater");
  await press("load-forth");
  await look("load, the appliances", link);
  await press("load-tab-heat");
  await bench.get("load-facts").waitFor();
  await look("load, the heat", link);
  await press("load-tab-numbers");
  await look("load, the numbers", link);
  await link.does("leave-attempt", {});
};

/** Goes through what comes with the second half of a learner's go; begins and ends at a locked bench. */
export const secondHalfScreens = async (
  bench: BenchScreen,
  link: BenchLink,
  address: string,
  look: Go["look"],
  press: Go["press"] = (id) => bench.get(id).tap(),
): Promise<void> => {
  const go: Go = { bench, link, look, press };
  await bench.page.goto(address);
  await link.seen(({ state }) => state === "ready");
  await link.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-07" });
  await bench.get("screen-scenarios").waitFor();
  await atHunt(go);
  await atLoad(go);
  await link.does("sign-out", {});
};
