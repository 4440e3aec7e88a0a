import type { BoardLeads } from "../../../shared/board/board-leads.ts";
import { describe, expect, it } from "vitest";
import { boardLines } from "../../../hardware/lines/board-lines.ts";
import { largestGroup } from "../../../hardware/lines/largest-group.ts";
import type { OpenBoard } from "../../../hardware/scan/open-board.ts";
import type { ChainCheck } from "../../../hardware/health/chain-check.ts";
import { LinesError } from "../../../hardware/lines/lines.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import type { LineFault } from "../../../hardware/lines/simulated-lines.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { seeded } from "../../seeded.ts";
import { type Disturbance, DisturbedLines } from "./disturbed-lines.ts";
import { contact, entry, ProgramBench, shippedBoard } from "./program-bench.ts";

const [small, workshop, coded] = ["small", "workshop", "workshop-coded"].map(shippedBoard) as [
  ReturnType<typeof shippedBoard>,
  ReturnType<typeof shippedBoard>,
  ReturnType<typeof shippedBoard>,
];
const onWorkshop = (): Promise<ProgramBench> => new ProgramBench().open(workshop);
const onCoded = (): Promise<ProgramBench> => new ProgramBench().open(coded);

describe("the scanner's program", () => {
  it.each([small, workshop, coded])("opens the board $id and tells a whole picture of it", async (board) => {
    const bench = await new ProgramBench().open(board);
    expect(bench.sent[0]).toEqual({
      type: "opened",
      lines: "simulated",
      lineCount: board === small ? 24 : 206,
      hasCodes: board === coded,
      hasProbes: board !== small,
      leads: { leads: [], codes: [] },
    });
    expect(bench.state).toMatchObject({
      boardId: board.id,
      groups: [],
      codes: [],
      unknown: [],
      faults: [],
      isSettled: true,
    });
    expect(bench.states().map(({ revision }) => revision)).toEqual([1, 2]);
  });

  it("says once a second that it is alive, with the patterns pulled so far", async () => {
    const bench = await onWorkshop();
    bench.sent.length = 0;
    bench.run(10_000);
    const alive = bench.sent.flatMap((message) => (message.type === "alive" ? [message.patternCount] : []));
    expect(alive.length).toBeGreaterThanOrEqual(9);
    expect(alive.length).toBeLessThanOrEqual(11);
    expect(alive).toEqual([...new Set(alive)].sort((a, b) => a - b));
  });

  it("answers requests that came while the board was being opened", async () => {
    const bench = new ProgramBench();
    const opening = bench.open(workshop);
    bench.program.hear({
      type: "plug",
      request: 7,
      contactA: contact("way-1.a.L"),
      contactB: contact("socket-1.a.L"),
    });
    await opening;
    expect(bench.sent).toContainEqual(expect.objectContaining({ type: "done", request: 7 }));
    expect(bench.state.groups).toEqual([["socket-1.a.L", "way-1.a.L"]]);
  });

  it("puts the leads and codes back that were in before", async () => {
    const leads: BoardLeads["leads"] = [
      [contact("socket-1.a.L"), contact("way-1.a.L")],
      [contact("socket-2.a.N"), contact("way-1.b.N")],
    ];
    const codes = [{ entry: entry("way-1.a"), code: 3 }];
    const bench = await new ProgramBench().open(coded, { leads: { leads, codes } });
    expect(bench.sent.find(({ type }) => type === "opened")).toMatchObject({ leads: { leads, codes } });
    // Never a picture without them on the way: it would look like a board that was emptied.
    expect(bench.states()[0]).toMatchObject({ groups: [{}, {}], codes });
    expect(bench.state.groups).toEqual([["socket-1.a.L", "way-1.a.L"], ["socket-2.a.N", "way-1.b.N"]]); // prettier-ignore
    expect(bench.state.codes).toEqual(codes);
  });

  it("tells why a board cannot be opened", async () => {
    const bench = new ProgramBench(() =>
      Promise.reject(new LinesError("no-sysfs-gpio", { path: "/sys/class/gpio" })),
    );
    await bench.open(workshop, { lines: "gpio" });
    expect(bench.sent).toEqual([
      { type: "open-failed", code: "no-sysfs-gpio", facts: { path: "/sys/class/gpio" } },
    ]);
  });

  it("releases the board and tells why when a pin fails in use", async () => {
    const bench = await onWorkshop();
    const lines = bench.opened!.lines as SimulatedLines;
    lines.exchange = () => {
      throw new LinesError("pin-failed", { bcm: 24 });
    };
    bench.sent.length = 0;
    bench.run(5_000);
    const [failed] = bench.sent.splice(bench.sent.findIndex(({ type }) => type === "open-failed"));
    expect(failed).toEqual({ type: "open-failed", code: "pin-failed", facts: { bcm: 24 } });
    bench.run(5_000);
    expect(bench.sent.map(({ type }) => type).filter((type) => type !== "alive")).toEqual([]);
    expect(lines.isClosed).toBe(true);
  });

  it("releases the board when it is told to close", async () => {
    const bench = await onWorkshop();
    const lines = bench.opened!.lines as SimulatedLines;
    bench.program.hear({ type: "close" });
    const patterns = lines.exchangeCount;
    bench.run(1_000);
    expect([lines.isClosed, lines.exchangeCount]).toEqual([true, patterns]);
  });
});

describe("hands on the simulated board", () => {
  it("plug a lead that is sensed within 10 ms, and pull it", async () => {
    const bench = await onWorkshop();
    const asked = bench.nowMs;
    const lead = { contactA: contact("socket-4.a.L"), contactB: contact("way-1.a.L") };
    const before = bench.state.revision;
    expect(bench.ask({ type: "plug", ...lead })).toEqual([
      {
        type: "done",
        request: 1,
        moved: { leads: { leads: [[lead.contactA, lead.contactB]], codes: [] }, sensedRevision: before + 1 },
      },
    ]);
    const sensed = bench.states().find(({ groups }) => groups.length === 1);
    expect(sensed?.groups).toEqual([["socket-4.a.L", "way-1.a.L"]]);
    expect(sensed!.monotonicMs - asked).toBeLessThan(10);
    const pulled = bench.ask({ type: "pull", what: { leads: [[lead.contactA, lead.contactB]] } });
    expect(pulled).toMatchObject([{ type: "done", moved: { leads: { leads: [], codes: [] } } }]);
    expect(bench.state.groups).toEqual([]);
  });

  it("plug a cable whose cores make contact 10 ms apart, and its code with the last", async () => {
    const bench = await onCoded();
    const asked = bench.nowMs;
    bench.ask({ type: "plug-cable", entryA: entry("way-1.a"), entryB: entry("ceiling-rose-1.s"), code: 2 });
    const seen = bench.states().filter(({ monotonicMs }) => monotonicMs > asked);
    const firstWith = (count: number): number =>
      seen.find(({ groups }) => groups.length === count)!.monotonicMs - asked;
    for (const count of [1, 2, 3]) {
      expect(firstWith(count)).toBeGreaterThanOrEqual((count - 1) * 10);
      expect(firstWith(count)).toBeLessThan((count - 1) * 10 + 10);
    }
    expect(bench.state.groups).toEqual([
      ["ceiling-rose-1.s.E", "way-1.a.E"],
      ["ceiling-rose-1.s.L", "way-1.a.L"],
      ["ceiling-rose-1.s.SL", "way-1.a.N"],
    ]);
    expect(bench.state.codes).toEqual([{ entry: "way-1.a", code: 2 }, { entry: "ceiling-rose-1.s", code: 2 }]); // prettier-ignore
    expect(seen.every(({ faults }) => faults.length === 0)).toBe(true);
    expect(seen.filter(({ isSettled }) => isSettled)).toHaveLength(1);
  });

  it("plug of a three-core cable only the cores that both entries have", async () => {
    // Code 7 is three-core and earth: it has no blue core, so nothing lands on N.
    const bench = await onCoded();
    bench.ask({ type: "plug-cable", entryA: entry("way-1.a"), entryB: entry("socket-1.a"), code: 7 });
    expect(bench.state.groups).toEqual([["socket-1.a.E", "way-1.a.E"], ["socket-1.a.L", "way-1.a.L"]]); // prettier-ignore
  });

  it("pull a whole entry with its codes, also while its cable is half in", async () => {
    const bench = await onCoded();
    bench.ask({ type: "plug-cable", entryA: entry("way-1.a"), entryB: entry("socket-1.a"), code: 3 });
    bench.ask({ type: "plug", contactA: contact("way-1.b.L"), contactB: contact("socket-2.a.L") });
    bench.ask({ type: "pull", what: { entry: entry("socket-1.a") } });
    expect(bench.state.groups).toEqual([["socket-2.a.L", "way-1.b.L"]]);
    expect(bench.state.codes).toEqual([]);
    bench.program.hear({
      type: "plug-cable",
      request: 90,
      entryA: entry("way-1.c"),
      entryB: entry("socket-1.b"),
      code: 3,
    });
    bench.run(15);
    expect(bench.state.groups).toHaveLength(3);
    bench.ask({ type: "pull", what: { entry: entry("way-1.c") } });
    expect(bench.state.groups).toEqual([["socket-2.a.L", "way-1.b.L"]]);
    bench.ask({ type: "pull", what: "all" });
    expect(bench.state).toMatchObject({ groups: [], codes: [], faults: [], unknown: [] });
  });

  it("are refused what is not on the board, by name", async () => {
    const bench = await onCoded();
    const refused = (message: Parameters<ProgramBench["ask"]>[0]): unknown => {
      const [answer] = bench.ask(message);
      return answer?.type === "refused" && [answer.code, answer.facts];
    };
    const [here, nowhere] = [contact("way-1.a.L"), contact("way-9.a.L")];
    expect(refused({ type: "plug", contactA: here, contactB: nowhere })).toEqual([
      "no-such-contact",
      { contact: nowhere },
    ]);
    expect(refused({ type: "pull", what: { leads: [[nowhere, here]] } })).toEqual([
      "no-such-contact",
      { contact: nowhere },
    ]);
    expect(refused({ type: "probe", probe: "red", at: nowhere })).toEqual([
      "no-such-contact",
      { contact: nowhere },
    ]);
    expect(refused({ type: "set-fault", contact: nowhere, fault: "stuck-low" })).toEqual([
      "no-such-contact",
      { contact: nowhere },
    ]);
    const [a, z] = [entry("way-1.a"), entry("way-1.z")];
    expect(refused({ type: "plug-cable", entryA: a, entryB: z })).toEqual(["no-such-entry", { entry: z }]);
    expect(refused({ type: "plug-cable", entryA: a, entryB: entry("socket-1.a"), code: 99 })).toEqual([
      "unknown-code",
      { code: "99" },
    ]);
    expect(refused({ type: "pull", what: { entry: z } })).toEqual(["no-such-entry", { entry: z }]);
    expect(refused({ type: "test-lead", entryA: a, entryB: z })).toEqual(["no-such-entry", { entry: z }]);
    expect(bench.state.groups).toEqual([]);
  });

  it("are refused everything on a real board", async () => {
    const bench = new ProgramBench(() => Promise.resolve({ lines: new SimulatedLines(206) }));
    await bench.open(workshop, { lines: "gpio" });
    const lead = { contactA: contact("way-1.a.L"), contactB: contact("socket-1.a.L") };
    for (const message of [
      { type: "plug", ...lead },
      { type: "plug-cable", entryA: entry("way-1.a"), entryB: entry("socket-1.a") },
      { type: "pull", what: "all" },
      { type: "probe", probe: "red", at: null },
      { type: "set-fault", contact: lead.contactA, fault: "stuck-low" },
    ] as const)
      expect(bench.ask(message)).toMatchObject([{ type: "refused", code: "not-on-a-real-board" }]);
    expect(bench.state.groups).toEqual([]);
  });

  it("may plug and pull as fast as they like without being taken for a loose contact", async () => {
    const bench = await onWorkshop();
    const lead = { contactA: contact("socket-4.a.L"), contactB: contact("way-1.a.L") };
    for (let turn = 0; turn < 40; turn += 1) {
      bench.program.hear(
        turn % 2 === 0
          ? { type: "plug", request: turn, ...lead }
          : { type: "pull", request: turn, what: { leads: [[lead.contactA, lead.contactB]] } },
      );
      bench.run(10);
      expect(bench.state.groups).toHaveLength(turn % 2 === 0 ? 1 : 0);
    }
    expect(bench.states().flatMap(({ faults, unknown }) => [...faults, ...unknown])).toEqual([]);
  });
});

describe("probes", () => {
  it("touch a test face, a contact, each other, or nothing, and are in no group", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "plug", contactA: contact("way-1.a.L"), contactB: contact("socket-1.a.L") });
    bench.ask({ type: "probe", probe: "red", at: contact("socket-1.front.L") });
    bench.ask({ type: "probe", probe: "black", at: contact("way-1.b.N") });
    expect(bench.state.probes).toEqual({ red: "socket-1.front.L", black: "way-1.b.N" });
    expect(bench.state.groups).toEqual([["socket-1.a.L", "way-1.a.L"]]);
    bench.ask({ type: "probe", probe: "red", at: contact("way-1.a.L") });
    expect(["way-1.a.L", "socket-1.a.L"]).toContain(bench.state.probes.red);
    expect(bench.state.groups).toEqual([["socket-1.a.L", "way-1.a.L"]]);
    bench.ask({ type: "plug", contactA: contact("socket-2.a.L"), contactB: contact("socket-2.front.L") });
    bench.ask({ type: "probe", probe: "red", at: contact("socket-2.front.L") });
    expect(bench.state.probes.red).toBe("socket-2.front.L");
    bench.ask({ type: "probe", probe: "black", at: null });
    bench.ask({ type: "probe", probe: "red", at: "other-probe" });
    expect(bench.state.probes).toEqual({ red: "other-probe", black: "other-probe" });
    bench.ask({ type: "probe", probe: "red", at: null });
    expect(bench.state.probes).toEqual({ red: null, black: null });
  });
});

describe("a bad line of the board", () => {
  const contacts = workshop.stations.flatMap(({ id, entries }) =>
    entries.flatMap(({ letter, lines }) =>
      Object.keys(lines).map((role) => contact(`${id}.${letter}.${role}`)),
    ),
  );
  const lead = { contactA: contact("fcu-1.c.L"), contactB: contact("socket-5.a.L") };

  it.each<[LineFault, string[], boolean]>([
    ["stuck-low", ["fcu-1.c.L", "socket-5.a.L"], false],
    ["stuck-high", ["fcu-1.c.L", "socket-5.a.L"], false],
    ["dead-output", ["fcu-1.c.L"], true],
    ["dead-input", ["fcu-1.c.L"], true],
  ])(
    "that is %s is named by station and contact and never read as unplugged",
    async (fault, named, isJoinSure) => {
      const bench = await onWorkshop();
      bench.ask({ type: "plug", ...lead });
      bench.ask({ type: "set-fault", contact: lead.contactA, fault });
      bench.ask({ type: "plug", contactA: contact("way-2.a.E"), contactB: contact("way-2.b.E") });
      expect(bench.state.faults.map(({ kind }) => kind)).toEqual(named.map(() => fault));
      expect(bench.state.faults.flatMap((each) => each.contacts).sort()).toEqual(named);
      expect(bench.state.faults.map(({ station }) => station)).toEqual(
        named.map((each) => each.slice(0, each.indexOf("."))),
      );
      expect(bench.state.unknown).toEqual(isJoinSure ? [] : named);
      expect(bench.state.groups.map(String)).toEqual([
        ...(isJoinSure ? [named[0] + ",socket-5.a.L"] : []),
        "way-2.a.E,way-2.b.E",
      ]);
      bench.ask({ type: "set-fault", contact: lead.contactA, fault: null });
      expect(bench.state).toMatchObject({ faults: [], unknown: [] });
      expect(bench.state.groups).toHaveLength(2);
    },
  );

  it("that comes and goes is a loose contact of the board", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "plug", ...lead });
    bench.ask({ type: "set-fault", contact: lead.contactA, fault: "loose-contact" });
    bench.run(5_000);
    expect(bench.state.unknown).toEqual(expect.arrayContaining([lead.contactA, lead.contactB]));
    expect(bench.state.faults.map(({ kind }) => kind)).toContain("loose-contact");
    bench.ask({ type: "set-fault", contact: lead.contactA, fault: null });
    bench.run(5_000);
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [["fcu-1.c.L", "socket-5.a.L"]] });
  });

  it("is one fault, no board, where no line answers", async () => {
    const bench = await onWorkshop();
    const lines = bench.opened!.lines as SimulatedLines;
    for (let line = 0; line < 206; line += 1) lines.setFault(lineIndex(line), "stuck-high");
    bench.run(3_000);
    expect(bench.state.faults).toEqual([{ kind: "no-board", contacts: [] }]);
    expect(bench.state.unknown.length).toBeGreaterThanOrEqual(contacts.length);
  });

  it("is no board, and the chain is asked, where leads in every contact let each line be called held high", async () => {
    let checkCount = 0;
    const chainCheck = (): ChainCheck => ((checkCount += 1), { kind: "no-loop" });
    const lines = new SimulatedLines(206);
    for (let at = 0; at < 206; at += 2) lines.join(lineIndex(at), lineIndex(at + 1));
    const bench = await new ProgramBench(() => Promise.resolve({ lines, chainCheck }), 4).open(workshop, {
      lines: "gpio",
    });
    bench.run(5_000);
    const before = checkCount;
    for (let line = 0; line < 206; line += 1) lines.setFault(lineIndex(line), "stuck-high");
    bench.run(3_000);
    expect(bench.state).toMatchObject({ faults: [{ kind: "no-board", contacts: [] }], groups: [] });
    expect(checkCount).toBeGreaterThan(before);
  });
});

describe("a group of more contacts than one output surely pulls low", () => {
  // Five by calculation on a chain board with 10 kΩ pull-ups: build-guide.test.ts has it worked out by hand.
  const stacked = [
    "socket-1.a.L",
    "socket-1.b.L",
    "socket-2.a.L",
    "socket-2.b.L",
    "socket-3.a.L",
    "socket-3.b.L",
  ];

  it("is told as a fault with its contacts unknown, and is believed again when a lead is out", async () => {
    const lines = new SimulatedLines(206);
    const open = (): Promise<OpenBoard> =>
      Promise.resolve({ lines, largestGroup: largestGroup(workshop.wiring) });
    const bench = await new ProgramBench(open, 4).open(workshop, { lines: "gpio" });
    const { lineOf } = boardLines(workshop);
    const [first, ...others] = stacked.map((name) => lineOf.get(contact(name))!);
    for (const other of others.slice(0, 4)) lines.join(first!, other);
    bench.run(2_000);
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [stacked.slice(0, 5)] });
    lines.join(first!, others[4]!);
    bench.run(2_000);
    expect(bench.state).toMatchObject({ groups: [], unknown: stacked });
    expect(new Set(bench.state.faults.map(({ kind }) => kind))).toEqual(new Set(["group-too-large"]));
    expect(bench.state.faults.flatMap(({ contacts }) => contacts)).toEqual(stacked);
    lines.part(first!, others[4]!);
    bench.run(2_000);
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [stacked.slice(0, 5)] });
  });

  it("is of any size in software, where nothing has a level", async () => {
    const bench = await onWorkshop();
    const [first, ...others] = stacked.map(contact);
    for (const other of others) bench.ask({ type: "plug", contactA: first!, contactB: other });
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [stacked] });
  });
});

describe("codes on plugs", () => {
  const strap = (bench: ProgramBench, at: string, code: number): void => {
    const [station, letter] = at.split(".");
    const found = coded.stations
      .find(({ id }) => id === station)!
      .entries.find((each) => each.letter === letter)!;
    const lines = bench.opened!.lines as SimulatedLines;
    found.codeContacts!.forEach((position, bit) => lines.setCode(position, ((code >> bit) & 1) === 1));
    bench.run(1_000);
  };

  it("without a cable are a fault of the board once settled", async () => {
    const bench = await onCoded();
    strap(bench, "socket-1.a", 3);
    const { faults } = bench.state;
    expect(faults).toEqual([
      {
        kind: "code-without-cable",
        station: "socket-1",
        contacts: ["socket-1.a.L", "socket-1.a.N", "socket-1.a.E"],
        facts: { entry: "socket-1.a", code: 3 },
      },
    ]);
    expect(bench.states().filter(({ isSettled, faults: each }) => !isSettled && each.length > 0)).toEqual([]);
  });

  it("that the table does not list are a fault and no cable size", async () => {
    const bench = new ProgramBench();
    await bench.open({ ...coded, codes: coded.codes!.filter(({ code }) => code !== 5) });
    bench.ask({ type: "plug", contactA: contact("way-1.a.L"), contactB: contact("socket-1.a.L") });
    strap(bench, "socket-1.a", 5);
    expect(bench.state.codes).toEqual([]);
    expect(bench.state.faults).toMatchObject([
      { kind: "unknown-code", station: "socket-1", facts: { code: 5 } },
    ]);
  });
});

describe("two outputs bridged in work on a real board with coded plugs", () => {
  it("are told at their place and held against nobody; the same join with a plug is a lead", async () => {
    const { lineOf, codeCount, entries } = boardLines(coded);
    const lines = new SimulatedLines(coded.wiring.kind === "chain" ? coded.wiring.lineCount : 0, codeCount);
    const bench = await new ProgramBench(() => Promise.resolve({ lines }), 4).open(coded, { lines: "gpio" });
    const [one, other] = [contact("socket-6.a.L"), contact("socket-3.b.L")];
    bench.program.hear({ type: "attended" });
    // Where low wins the fight a bridge reads as copper between the contacts does.
    lines.join(lineOf.get(one)!, lineOf.get(other)!);
    bench.run(2_000);
    expect(bench.state.faults).toEqual([
      { kind: "doubtful-lead", contacts: [other, one], facts: { reason: "no-plug" } },
    ]);
    expect(bench.state.unknown).toEqual([other, one]);
    for (const { entry: at, codeContacts } of entries)
      if (at === "socket-6.a" || at === "socket-3.b") lines.setCode(codeContacts[0]!, true);
    bench.run(2_000);
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [[other, one]] });
  });
});

describe("the self-check", () => {
  it("is refused while a lead is in", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "plug", contactA: contact("way-1.a.L"), contactB: contact("socket-1.a.L") });
    expect(bench.ask({ type: "self-check" })).toMatchObject([
      { type: "refused", code: "board-not-empty", facts: { contacts: "socket-1.a.L, way-1.a.L" } },
    ]);
  });

  it("tells how far it is and then what is wrong", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "set-fault", contact: contact("socket-3.b.N"), fault: "dead-input" });
    const answers = bench.ask({ type: "self-check" });
    expect(answers.filter(({ type }) => type === "self-check-progress")).toHaveLength(2 * 206);
    expect(answers.at(-1)).toMatchObject({
      type: "self-check-result",
      faults: [{ kind: "no-answer", station: "socket-3", contacts: ["socket-3.b.N"] }],
    });
  });

  it("finds outputs that are tied together, also on a real board", async () => {
    const lines = new SimulatedLines(206);
    const bench = new ProgramBench(() => Promise.resolve({ lines }));
    const [a, b] = [workshop.stations[0]!.entries[0]!.lines.L!, workshop.stations[0]!.entries[0]!.lines.N!];
    lines.tieOutputs(lineIndex(a), lineIndex(b));
    await bench.open(workshop, { lines: "gpio" });
    expect(bench.state.groups).toEqual([["way-1.a.L", "way-1.a.N"]]);
    expect(bench.ask({ type: "self-check" }).at(-1)).toMatchObject({
      faults: [{ kind: "outputs-tied", station: "way-1", contacts: ["way-1.a.L", "way-1.a.N"] }],
    });
    expect(bench.state.groups).toEqual([]);
    expect(bench.state.unknown).toEqual(["way-1.a.L", "way-1.a.N"]);
  });
});

describe("a board with shorts that looks as if leads were in", () => {
  it("is checked once somebody says that all leads are out, and each short is named", async () => {
    const copper = new SimulatedLines(206);
    const lines = new DisturbedLines(copper, seeded(3), () => 0);
    const bench = new ProgramBench(() => Promise.resolve({ lines }));
    await bench.open(workshop, { lines: "gpio" });
    const [way] = workshop.stations;
    const shorts = ["a", "b", "c", "d"].map((letter) => {
      const { L, N } = way!.entries.find((each) => each.letter === letter)!.lines;
      copper.tieOutputs(lineIndex(L!), lineIndex(N!));
      return [`way-1.${letter}.L`, `way-1.${letter}.N`];
    });
    bench.run(1_000);
    expect(bench.state.groups).toEqual(shorts);
    expect(bench.ask({ type: "self-check" })).toMatchObject([{ type: "refused", code: "board-not-empty" }]);
    bench.ask({ type: "self-check", areLeadsOut: true });
    bench.run(2_000);
    expect(bench.sent.find(({ type }) => type === "self-check-result")).toMatchObject({
      faults: shorts.map((contacts) => ({ kind: "outputs-tied", station: "way-1", contacts })),
    });
    expect(bench.state).toMatchObject({ groups: [], unknown: shorts.flat() });
  });

  it("is not checked where it is simulated and hands know of the lead", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "plug", contactA: contact("way-1.a.L"), contactB: contact("socket-1.a.L") });
    expect(bench.ask({ type: "self-check", areLeadsOut: true })).toMatchObject([
      { type: "refused", code: "board-not-empty" },
    ]);
  });
});

describe("a chain whose inputs stand in another order than its outputs", () => {
  // The word that goes round both comes back as it should: only who answers whom tells.
  const checked = async (disturbance: Disturbance): Promise<unknown> => {
    const lines = new DisturbedLines(new SimulatedLines(206), seeded(3), () => 0);
    lines.disturbance = disturbance;
    const bench = await new ProgramBench(() => Promise.resolve({ lines }), 1).open(workshop, {
      lines: "gpio",
    });
    const answers = bench.ask({ type: "self-check", areLeadsOut: true });
    bench.run(2_000);
    const result = [...answers, ...bench.sent].find(({ type }) => type === "self-check-result");
    return result?.type === "self-check-result" && result.faults;
  };
  const wrongOrder = (order: string) => [{ kind: "wrong-order", contacts: [], facts: { order } }];

  it.each<[string, Disturbance]>([
    ["0 → 25, 1 → 24, 2 → 23, 3 → 22, … (26)", { kind: "turned", chain: "inputs" }],
    ["0 → 25, 1 → 24, 2 → 23, 3 → 22, … (26)", { kind: "turned", chain: "outputs" }],
    ["3 → 7, 7 → 3", { kind: "swapped", chain: "inputs", chips: [3, 7] }],
    ["0 → 1, 1 → 0", { kind: "swapped", chain: "outputs", chips: [0, 1] }],
    ["3: A → H", { kind: "reversed", chain: "inputs", chip: 3 }],
  ])("is told by the self-check as %s, and no contact is named", async (order, disturbance) => {
    expect(await checked(disturbance)).toEqual(wrongOrder(order));
  });

  it("is not told where two wires are crossed, which is no order of chips", async () => {
    const crossed = [lineIndex(3), lineIndex(60)] as const;
    const faults = await checked({ kind: "crossed", chain: "inputs", lines: crossed });
    expect(JSON.stringify(faults)).not.toContain("wrong-order");
    expect(faults).not.toEqual([]);
  });
});

describe("a probe that is down at the self-check", () => {
  it("is named as what it is, and no output is called tied", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "probe", probe: "red", at: contact("way-1.a.L") });
    const answers = bench.ask({ type: "self-check" });
    bench.run(2_000);
    const result = [...answers, ...bench.sent].find(({ type }) => type === "self-check-result");
    expect(result).toMatchObject({
      faults: [{ kind: "probe-down", contacts: ["way-1.a.L"], facts: { probe: "red" } }],
    });
    expect(bench.state).toMatchObject({ unknown: [], probes: { red: "way-1.a.L", black: null } });
  });

  it("on the other probe is named too, once for each", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "probe", probe: "red", at: "other-probe" });
    bench.ask({ type: "self-check" });
    bench.run(2_000);
    expect(bench.sent.find(({ type }) => type === "self-check-result")).toMatchObject({
      faults: (["red", "black"] as const).map((probe) => ({
        kind: "probe-down",
        contacts: [],
        facts: { probe },
      })),
    });
  });
});

describe("the walk test", () => {
  it("tells each contact a probe reaches, which are new, and how many are left", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "walk-test", on: true });
    for (const at of ["way-1.a.L", null, "way-1.a.N", null, "way-1.a.L", null] as const)
      bench.ask({ type: "probe", probe: "red", at: at === null ? null : contact(at) });
    expect(bench.sent.filter(({ type }) => type === "walk-test-touch")).toEqual([
      { type: "walk-test-touch", contact: "way-1.a.L", firstTime: true, leftCount: 203 },
      { type: "walk-test-touch", contact: "way-1.a.N", firstTime: true, leftCount: 202 },
      { type: "walk-test-touch", contact: "way-1.a.L", firstTime: false, leftCount: 202 },
    ]);
    bench.ask({ type: "walk-test", on: false });
    bench.ask({ type: "probe", probe: "red", at: contact("way-1.a.E") });
    expect(bench.sent.filter(({ type }) => type === "walk-test-touch")).toHaveLength(3);
  });

  it("tells a line held high from one that just does not answer", async () => {
    const bench = await onWorkshop();
    bench.ask({ type: "set-fault", contact: contact("way-1.a.L"), fault: "stuck-high" });
    expect(bench.state.faults).toMatchObject([{ kind: "no-answer", contacts: ["way-1.a.L"] }]);
    bench.ask({ type: "probe", probe: "red", at: contact("way-1.a.L") });
    bench.ask({ type: "probe", probe: "red", at: null });
    expect(bench.state.faults).toMatchObject([{ kind: "stuck-high", contacts: ["way-1.a.L"] }]);
  });
});

describe("the lead tester", () => {
  it("names the core that is open and the code that is read at each end", async () => {
    const bench = await onCoded();
    bench.ask({ type: "plug-cable", entryA: entry("socket-1.a"), entryB: entry("socket-2.a"), code: 3 });
    bench.ask({
      type: "pull",
      what: { leads: [[contact("socket-1.a.N"), contact("socket-2.a.N")]] },
    });
    expect(
      bench.ask({ type: "test-lead", entryA: entry("socket-1.a"), entryB: entry("socket-2.a") }),
    ).toEqual([
      {
        type: "lead-result",
        request: 3,
        joined: [["socket-1.a.E", "socket-2.a.E"], ["socket-1.a.L", "socket-2.a.L"]], // prettier-ignore
        open: ["socket-1.a.N", "socket-2.a.N"],
        codes: [{ entry: "socket-1.a", code: 3 }, { entry: "socket-2.a", code: 3 }], // prettier-ignore
      },
    ]);
  });

  it("waits until the plugs are in", async () => {
    const bench = await onWorkshop();
    bench.program.hear({
      type: "plug-cable",
      request: 50,
      entryA: entry("socket-1.a"),
      entryB: entry("socket-2.a"),
    });
    bench.run(20);
    const [result] = bench.ask({
      type: "test-lead",
      entryA: entry("socket-1.a"),
      entryB: entry("socket-2.a"),
    });
    expect(result).toMatchObject({ type: "lead-result", open: [] });
  });
});

describe("a board whose pins are slow to be had", () => {
  it("says once a second that the scanner is alive, so that nobody takes it to hang", async () => {
    let open = (): void => undefined;
    const bench = new ProgramBench(
      () => new Promise((resolve) => (open = () => resolve({ lines: new SimulatedLines(206) }))),
      4,
    );
    const opening = bench.open(workshop, { lines: "gpio" });
    bench.run(8_000);
    expect(bench.sent.filter(({ type }) => type === "alive")).toHaveLength(7);
    open();
    await opening;
    expect(bench.state.faults).toEqual([]);
  });
});

describe("a chain that cannot be read", () => {
  it("is told as such with every contact unknown, and is tried again until it is sound", async () => {
    let check: ChainCheck = { kind: "open-chain", inputChipCount: 12 };
    const bench = new ProgramBench(() =>
      Promise.resolve({ lines: new SimulatedLines(206), chainCheck: () => check }),
    );
    await bench.open(workshop, { lines: "gpio" });
    expect(bench.state.faults).toEqual([{ kind: "open-chain", contacts: [], facts: { inputChipCount: 12 } }]);
    expect(bench.state.unknown).toHaveLength(204);
    bench.sent.length = 0;
    bench.run(5_000);
    expect(bench.sent.filter(({ type }) => type === "alive").length).toBeGreaterThanOrEqual(4);
    check = { kind: "sound" };
    bench.run(5_000);
    expect(bench.state).toMatchObject({ faults: [], unknown: [], groups: [] });
  });

  it.each<[ChainCheck, string]>([
    [
      { kind: "wrong-length", inputChipCount: 25, outputChipCount: 26, expectedChipCount: 26 },
      "wrong-length",
    ],
    [{ kind: "swapped-pins", swaps: [{ signal: "load", pin: "latch" }] }, "swapped-pins"],
    [{ kind: "no-answer", level: 1 }, "no-board"],
  ])("is named by its cause: %j", async (check, kind) => {
    const bench = new ProgramBench(() =>
      Promise.resolve({ lines: new SimulatedLines(206), chainCheck: () => check }),
    );
    await bench.open(workshop, { lines: "gpio" });
    expect(bench.state.faults.map((fault) => fault.kind)).toEqual([kind]);
  });

  it("is found in use by the word that goes round now and then, and one word that is lost is none", async () => {
    const checks: ChainCheck[] = [];
    let check: ChainCheck = { kind: "sound" };
    const lines = new SimulatedLines(206);
    const chainCheck = (): ChainCheck => {
      // Nothing is pulled when the word goes round: the lines stay as the scanner left them.
      expect(lines.pulledLines()).toEqual([]);
      checks.push(check);
      const now = check;
      check = lostOnce.pop() ?? now;
      return now;
    };
    const lostOnce: ChainCheck[] = [];
    const bench = new ProgramBench(() => Promise.resolve({ lines, chainCheck }), 4);
    await bench.open(workshop, { lines: "gpio" });
    bench.run(61_000);
    expect(checks.length).toBeGreaterThanOrEqual(6);
    expect(checks.length).toBeLessThanOrEqual(8);
    check = { kind: "open-chain", inputChipCount: 3 };
    lostOnce.push({ kind: "sound" });
    bench.run(15_000);
    expect(bench.state.faults).toEqual([]);
    check = { kind: "open-chain", inputChipCount: 3 };
    bench.run(15_000);
    expect(bench.state.faults).toEqual([{ kind: "open-chain", contacts: [], facts: { inputChipCount: 3 } }]);
  });

  it("whose word never came back, as without the tie, is not asked again in use", async () => {
    let count = 0;
    const chainCheck = (): ChainCheck => ((count += 1), { kind: "no-loop" });
    const bench = new ProgramBench(() => Promise.resolve({ lines: new SimulatedLines(206), chainCheck }), 4);
    await bench.open(workshop, { lines: "gpio" });
    const atStart = count;
    bench.run(30_000);
    expect(count).toBe(atStart);
    // It is no harm to the readings, so only whoever checks the board is told.
    expect(bench.state.faults).toEqual([]);
    bench.ask({ type: "self-check" });
    bench.run(2_000);
    expect(bench.sent.find(({ type }) => type === "self-check-result")).toMatchObject({
      faults: [{ kind: "no-tie", contacts: [] }],
    });
  });

  it("is found when the board goes silent in use", async () => {
    let check: ChainCheck = { kind: "sound" };
    const lines = new SimulatedLines(206);
    const bench = new ProgramBench(() => Promise.resolve({ lines, chainCheck: () => check }));
    await bench.open(workshop, { lines: "gpio" });
    bench.run(5_000);
    for (let line = 0; line < 206; line += 1) lines.setFault(lineIndex(line), "stuck-high");
    check = { kind: "no-answer", level: 1 };
    bench.run(3_000);
    expect(bench.state.faults).toEqual([{ kind: "no-board", contacts: [], facts: { level: 1 } }]);
  });
});
