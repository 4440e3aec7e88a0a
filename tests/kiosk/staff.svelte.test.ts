import { tick } from "svelte";
import { describe, expect, it } from "vitest";
import { choosePanel } from "../../kiosk/panel/panel-profile.ts";
import { sizesFor } from "../../kiosk/panel/sizes.ts";
import type { StaffView } from "../../shared/protocol/bench-view.ts";
import { fitComplaints } from "./fit-check.ts";
import { pseudoText } from "./pseudo-text.ts";
import { byId, sheetStands, showBench } from "./show-bench.ts";
import { sampleView } from "./views.ts";

const nobody: StaffView = { me: null, unlockers: [] };
const trainer: StaffView = {
  ...nobody,
  me: { name: "Maud Perrin", role: "trainer" },
  work: { name: "Bryony Cole", mode: "assessed", isWaitingForTrainer: true },
};
const technician: StaffView = {
  ...nobody,
  me: { name: "Ruth Okafor", role: "technician" },
  network: { isOpen: false, isChosen: true },
  people: { staff: [{ id: "p-1", name: "Maud Perrin", role: "trainer" }], held: [] },
};
const unlockers = [
  { id: "p-1", name: "Maud Perrin", role: "trainer" as const },
  { id: "p-2", name: "Ruth Okafor", role: "technician" as const },
];

const open = async (
  staff: StaffView,
  taps: string[],
  more: Partial<Parameters<typeof showBench>[0]> = {},
) => {
  const shown = await showBench({ view: sampleView("sign-in", { staff }), ...more });
  for (const id of ["key-menu", "key-staff", ...taps]) {
    byId(id).click();
    await tick();
    if (id === "key-staff") await sheetStands();
  }
  return shown;
};
const digits = (pin: string): string[] => [...pin].map((digit) => `key-pin-${digit}`);

describe("the sheet for the staff", () => {
  it("unlocks with the PIN of whoever is chosen, and shows none of its digits", async () => {
    const { sent, frame } = await open({ ...nobody, unlockers }, ["key-unlock-p-2", ...digits("482915")]);
    expect(frame.textContent).not.toContain("482915");
    byId("key-pin-enter").click();
    expect(sent).toEqual([{ name: "sign-in", command: { by: "pin", person: "p-2", pin: "482915" } }]);
  });

  it("sets the first person up with the code, a name and a PIN of six digits at least", async () => {
    const code = "ABCD-2345";
    const { sent, frame } = await open({ ...nobody, firstStartCode: code }, []);
    expect(frame.textContent).toContain(code);
    byId("key-set-up").click();
    await tick();
    const keyboard = byId("keyboard");
    const type = (letter: string) =>
      [...keyboard.querySelectorAll("button")].find(({ textContent }) => textContent === letter)?.click();
    for (const letter of "IDA") type(letter);
    byId("key-space").click();
    for (const letter of "NO") type(letter);
    await tick();
    byId("key-name-enter").click();
    await tick();
    for (const id of digits("48291")) byId(id).click();
    await tick();
    expect(byId("key-pin-enter")).toHaveProperty("disabled", true);
    byId("key-pin-5").click();
    await tick();
    byId("key-pin-enter").click();
    expect(sent).toEqual([{ name: "set-up", command: { code, name: "Ida No", pin: "482915" } }]);
  });

  it("lets a trainer have work go on that a power cut left open, or end it with a reason", async () => {
    const { sent } = await open(trainer, ["key-confirm-resume", "key-end-work", "key-end-bench-at-fault"]);
    expect(sent).toEqual([
      { name: "confirm-resume", command: {} },
      { name: "end-attempt", command: { why: "bench-at-fault" } },
    ]);
  });

  it("lets a technician keep somebody's records, give a new PIN, and erase for good after asking once more", async () => {
    const { sent, frame } = await open(technician, ["key-people", "key-person-p-1", "key-hold"]);
    for (const id of ["key-new-pin", ...digits("640281"), "key-pin-enter"]) {
      byId(id).click();
      await tick();
    }
    await tick();
    byId("key-erase").click();
    await tick();
    expect(sent).toHaveLength(2);
    expect(frame.textContent).toContain("taken away for good");
    byId("key-erase-really").click();
    await tick();
    expect(sent).toEqual([
      { name: "hold-person", command: { person: "p-1", isHeld: true } },
      { name: "renew-pin", command: { person: "p-1", pin: "640281" } },
      { name: "erase-person", command: { person: "p-1" } },
    ]);
  });

  it("says whose records are on hold, takes the hold off, and makes no PIN for a learner", async () => {
    const learner = sampleView("sign-in").learners[0];
    if (!learner) throw new Error("no learner");
    const people = { staff: [], held: [learner.id] };
    const { sent, frame } = await open({ ...technician, people }, ["key-people", `key-person-${learner.id}`]);
    expect(frame.textContent).toContain("are on hold");
    expect(frame.querySelector('[data-testid="key-new-pin"]')).toBeNull();
    byId("key-hold").click();
    expect(sent).toEqual([{ name: "hold-person", command: { person: learner.id, isHeld: false } }]);
  });

  it("says what was refused where it can be read, over the sheet", async () => {
    const answer = { ok: false as const, code: "wait-to-try" as const, facts: { seconds: 8 } };
    await open({ ...nobody, unlockers }, ["key-unlock-p-1", "key-pin-1", "key-pin-enter"], { answer });
    await tick();
    expect(byId("staff-refusal").textContent).toContain("Wait 8 s");
  });

  const sheets: { what: string; staff: StaffView; taps: string[] }[] = [
    {
      what: "a first start",
      staff: { ...nobody, firstStartCode: "ABCD-2345", isDemonstration: true },
      taps: [],
    },
    { what: "a name", staff: { ...nobody, firstStartCode: "ABCD-2345" }, taps: ["key-set-up"] },
    { what: "who unlocks", staff: { ...nobody, unlockers }, taps: [] },
    { what: "a PIN", staff: { ...nobody, unlockers }, taps: ["key-unlock-p-1"] },
    { what: "a trainer", staff: trainer, taps: [] },
    { what: "a reason", staff: trainer, taps: ["key-end-work"] },
    { what: "a technician", staff: technician, taps: [] },
    { what: "people", staff: technician, taps: ["key-people"] },
    { what: "one of them", staff: technician, taps: ["key-people", "key-person-p-1"] },
    { what: "an erasure", staff: technician, taps: ["key-people", "key-person-p-1", "key-erase"] },
    { what: "a part", staff: technician, taps: ["key-add-person"] },
  ];
  it.each(sheets)(
    "with $what can be read and touched on a small panel, also in longer words",
    async ({ staff, taps }) => {
      const { frame } = await open(staff, taps, { lengthen: pseudoText });
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 30)));
      expect(fitComplaints(frame, sizesFor(choosePanel("", 800, 480), false))).toEqual([]);
    },
  );
});
