import type { ContactId } from "../../shared/board/ids.ts";
import type { BenchLink } from "./bench-link.ts";
import type { BenchScreen } from "./bench-screen.ts";

type Look = (screen: string) => Promise<void>;

/** What spoils the ring of the sun room: a spur that goes on, a small cable, lights on the ring, no fuse yet. */
const mistakes = [
  ["socket-2.c", "socket-3.a", 2.5],
  ["socket-3.b", "socket-4.a", 1.5],
  ["socket-2.d", "fcu-1.c", 2.5],
  ["fcu-1.a", "fcu-2.a", 2.5],
  ["socket-1.c", "wall-light-2.a", 1],
] as const;

const closeDialog = (bench: BenchScreen) => bench.get("key-close").tap();

/**
 * Goes once through every screen, card and dialog of a learner's go, with a board full of mistakes, and calls
 * `look` at each. Begins at a locked bench and ends at one.
 */
export const everyScreen = async (
  bench: BenchScreen,
  link: BenchLink,
  address: string,
  look: Look,
): Promise<void> => {
  const { page } = bench;
  await page.goto(address);
  await bench.get("screen-sign-in").waitFor();
  await look("sign-in");
  await bench.get("key-badge").tap();
  await look("keyboard");
  await page.reload();
  await link.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-07" });
  await bench.get("screen-scenarios").waitFor();
  await look("scenarios");
  await bench.get("key-menu").tap();
  await look("menu before a task");
  await bench.get("key-public").tap();
  await bench.get("public-cautions").waitFor();
  await look("cautions, for anybody");
  await closeDialog(bench);
  await bench.get("scenario-sun-room").tap();
  await look("scenario chosen");
  await bench.get("key-practice").tap();
  await bench.get("screen-caution").waitFor();
  await look("caution");
  await bench.get("key-accept-caution").tap();

  await bench.get("dead-terminal-L").tap();
  await bench.get("dead-terminal-N").tap();
  await bench.get("dead-missed").waitFor();
  await look("make dead, live");
  await bench.get("step-wire").tap({ force: true });
  await bench.get("refusal").waitFor();
  await look("refusal");
  await bench.get("key-menu").tap();
  await bench.get("key-as-found").tap();
  await look("as found");
  await bench.get("key-match").tap();
  await bench.makeDead();
  await look("make dead, done");

  await bench.get("step-plan").tap();
  await bench.get("screen-plan").waitFor();
  await look("plan, a number");
  await link.does("answer-plan", { question: "designCurrentA", answer: 6.7 });
  await bench.get("key-answer-1").tap();
  await bench.get("screen-plan").getByRole("img").waitFor();
  await look("plan, a choice and bars");
  await bench.get("key-plan-next").tap();

  for (const [entryA, entryB, csaMm2] of mistakes)
    await link.does("plug-cable", { entryA, entryB, csaMm2 } as Parameters<
      typeof link.does<"plug-cable">
    >[1]);
  for (const role of ["L", "N", "E"])
    await link.does("plug", {
      contactA: `wall-light-2.b.${role}`,
      contactB: `wall-light-1.a.${role}`,
    } as Parameters<typeof link.does<"plug">>[1]);
  await bench.expectCable("wall-light-1.a~wall-light-2.b");
  await look("wire, a size is asked for");
  await bench.get("key-size-1").first().tap();
  await bench.get("ask-size").waitFor({ state: "hidden" });
  await bench.checkUntil(bench.findings().first());
  await link.seen(({ attempt }) => attempt?.verdict?.isHeld === false);
  await look("wire, notes");
  for (let left = 3; left > 0; left -= 1) await link.does("ask-hint", {});
  await look("wire, notes and hints");
  await bench.findings().first().tap();
  await look("wire, a finding");
  await bench.get("key-note-words").tap();
  await bench.get("dialog-words").waitFor();
  await look("words");
  await closeDialog(bench);
  await bench.get("key-close-card").tap();
  await look("wire, the plan");
  await bench.openCard("fcu-2");
  await bench.get("key-change-fuseRatingA").tap();
  await look("wire, a station");
  await bench.get("key-close-card").tap();
  await bench.get("cable-fcu-1.a~fcu-2.a").tap();
  await look("wire, a cable");
  await bench.get("key-close-card").tap();
  await bench.openCard("socket-2");
  await bench.get("key-close-card").tap();
  await bench.get("key-tray").tap();
  await look("tray");
  await closeDialog(bench);
  await bench.get("key-menu").tap();
  await look("menu in a task");
  await bench.get("key-task").tap();
  await look("task");
  await closeDialog(bench);
  await bench.get("key-menu").tap();
  await bench.get("key-clear").tap();
  await look("asking");
  await bench.get("key-no").tap();

  await bench.get("key-face").tap();
  await look("face");
  await bench.get("station-fcu-1").tap();
  await look("face, one open");
  await bench.get("station-socket-3").tap();
  await look("face, two open");
  await bench.get("contact-socket-3.c.L").tap();
  await look("face, a lead in hand");
  await bench.get("key-cancel").tap();
  await bench.get("contact-socket-3.a.L").tap();
  await look("face, a contact");
  await bench.get("key-close-card").tap();
  await bench.get("key-face").tap();

  await bench.get("step-test").tap();
  await bench.get("screen-test").waitFor();
  await bench.get("meter-dial-low-ohms").tap();
  await look("test, the meter");
  await link.does("meter-act", { what: "probe", probe: "red", at: "socket-2.front.L" as ContactId });
  await bench.get("meter-tab-way").tap();
  await look("test, the circuit");
  await bench.get("meter-energise").tap();
  await bench.get("refusal").waitFor();
  await look("test, not switched on");
  await bench.get("meter-tab-meter").tap();
  await bench.get("meter-dial-insulation").tap();
  await link.does("meter-act", { what: "probe", probe: "black", at: "socket-2.front.E" as ContactId });
  await bench.get("meter-press").tap();
  await look("test, insulation");
  await bench.get("meter-write").tap();
  await bench.get("meter-over").tap();
  await look("test, a reading is written down");
  await bench.get("meter-pass").tap();
  await bench.get("meter-tab-record").tap();
  await bench.get("meter-expected-ring-step-1-L").tap();
  await look("test, the record");

  await bench.get("step-hand-in").tap();
  await bench.get("requirement-0").waitFor();
  await look("hand in");
  await bench.get("key-ready").tap();
  await page.getByTestId("key-ready").waitFor({ state: "hidden" });
  await look("ready for check");
  await bench.get("key-hand-in").tap();
  await bench.get("key-yes").tap();
  await bench.get("screen-handed-in").waitFor();
  await look("handed in");
  await link.does("leave-attempt", {});
  await link.does("sign-out", {});
};
