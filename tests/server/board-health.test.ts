import { boardLines } from "../../hardware/lines/board-lines.ts";
import { soon } from "./board/board-double.ts";
import { beforeAll, describe, expect, it } from "vitest";
import { contactsOf } from "../../server/board/contacts-of.ts";
import { leadsOfCable } from "../../server/board/leads-of-cables.ts";
import { scannerProcess } from "../../server/board/scanner-process.ts";
import { systemTimers } from "../../server/clock/system-clock.ts";
import { readBoardFile } from "../../server/library.ts";
import { ScannerClient, type ScannerClientOptions } from "../../server/scanner-client.ts";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type ContactId, type EntryId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import { bundle } from "./bundle.ts";
import { boardWithProbes, smallBoard } from "./small-board.ts";
import { lead, leadsOf, TestBench } from "./test-bench.ts";
import { Screen, testServer } from "./test-server.ts";

const [wayA, socketA] = ["way-1.a", "socket-1.a"] as [EntryId, EntryId];
const stuckAt = (contact: string): BoardFault => ({
  kind: "stuck-low",
  station: stationOf(contact as ContactId),
  contacts: [contact as ContactId],
});
const stuck = stuckAt("socket-1.a.L");
const tied: BoardFault = {
  kind: "outputs-tied",
  contacts: ["socket-2.a.L", "socket-3.a.L"] as ContactId[],
};

const lineOf = (contact: string) => boardLines(smallBoard().board).lineOf.get(contact as ContactId)!;

/** Has the board checked, and waits until that is done. */
async function checked(bench: TestBench): Promise<void> {
  const begun = bench.does("self-check", {});
  await soon();
  bench.clock.advance(1000);
  await begun;
}

describe("what a self-check finds", () => {
  it("is shown with what is sensed besides, each contact once, and is gone when somebody begins to work", async () => {
    const bench = await new TestBench().start();
    bench.port.breaks("socket-1.a.L" as ContactId, "stuck-low");
    bench.port.lines!.tieOutputs(lineOf("socket-2.a.L"), lineOf("socket-3.a.L"));
    await checked(bench);
    expect(bench.view().boardHealth).toEqual({
      selfCheck: { doneCount: 24, totalCount: 24, isDone: true },
      faults: [stuck, tied],
    });
    bench.port.breaks("socket-1.a.L" as ContactId, null);
    bench.port.lines!.untieOutputs();
    await checked(bench);
    expect(bench.view().boardHealth?.faults).toEqual([]);
    await bench.isWiring();
    expect(bench.view().boardHealth).toBeUndefined();
  });

  it("on a real board may be outputs that are tied: what reads as joined there is left to the scanner", async () => {
    const bench = await new TestBench({ isSimulated: false }).start();
    bench.port.lines!.tieOutputs(lineOf("socket-2.a.L"), lineOf("socket-3.a.L"));
    bench.atRest();
    await checked(bench);
    expect(bench.view().boardHealth?.faults).toEqual([tied]);
  });
});

describe("a walk along the board", () => {
  it("lists what was touched, the latest last, and how many contacts are left", async () => {
    const board = boardWithProbes();
    const bench = await new TestBench({ parts: { board } }).start();
    await bench.does("walk-test", { isOn: true });
    expect(bench.view().boardHealth?.walk).toEqual({ isOn: true, touched: [], leftCount: 24 });
    for (const contact of ["way-1.a.L", "way-1.a.N", "way-1.a.L"] as ContactId[]) {
      bench.port.touches(contact);
      bench.port.touches(null);
    }
    await bench.does("walk-test", { isOn: false });
    expect(bench.view().boardHealth?.walk).toEqual({
      isOn: false,
      touched: ["way-1.a.N", "way-1.a.L"],
      leftCount: 22,
    });
    expect(bench.port.requests.map((request) => request.type)).toEqual(["walk-test", "walk-test"]);
  });

  it("needs probes, and ends when somebody begins to work or the scanner stops", async () => {
    expect(await (await new TestBench().start()).refusal("walk-test", { isOn: true })).toBe("no-probes");
    const bench = await new TestBench({ parts: { board: boardWithProbes() } }).start();
    await bench.does("walk-test", { isOn: true });
    await bench.isWiring();
    expect(bench.view().boardHealth).toBeUndefined();
    expect(bench.port.requests.at(-1)).toEqual({ type: "walk-test", on: false });
    await bench.does("walk-test", { isOn: true });
    await bench.port.dies();
    expect(bench.view().boardHealth).toBeUndefined();
    expect(await bench.refusal("walk-test", { isOn: true })).toBe("no-board");
  });

  it("on the simulated board moves a probe without a task; at other times a probe belongs to the work", async () => {
    const bench = await new TestBench({ parts: { board: boardWithProbes() } }).start();
    const touch = { probe: "red", at: "way-1.a.L" as ContactId } as const;
    expect(await bench.refusal("probe", touch)).toBe("not-signed-in");
    await bench.does("walk-test", { isOn: true });
    await bench.does("probe", touch);
  });

  it("has every contact of the board to touch, its test faces included", () => {
    const { board } = readBoardFile("hardware/boards/workshop.json");
    // 206 lines, two of them the probes.
    expect(new Set(contactsOf(board)).size).toBe(204);
    expect(contactsOf(board)).toContain("socket-1.front.L");
  });
});

describe("the lead tester", () => {
  const codes = [
    { code: 3, csaMm2: 2.5, cores: ["brown", "blue", "earth"] },
  ] satisfies BoardDescription["codes"];

  it("shows which cores are joined, which are open, and the size its code stands for; again with each change", async () => {
    const bench = await (await new TestBench({ codes }).start()).isWiring();
    await bench.cable(wayA, socketA, 2.5);
    await bench.does("test-lead", { entryA: wayA, entryB: socketA });
    bench.atRest();
    expect(bench.view().boardHealth?.lead).toEqual({
      entryA: wayA,
      entryB: socketA,
      joined: ["E", "L", "N"].map((role) => [`way-1.a.${role}`, `socket-1.a.${role}`]),
      open: [],
      codes: [
        { entry: wayA, code: 3, csaMm2: 2.5 },
        { entry: socketA, code: 3, csaMm2: 2.5 },
      ],
    });
    bench.port.byHand({ out: [lead(wayA, socketA, "E")] });
    bench.atRest();
    expect(bench.view().boardHealth?.lead?.open).toEqual(["way-1.a.E", "socket-1.a.E"]);
  });

  it("refuses an entry that is not on the board, and one with itself", async () => {
    const bench = await new TestBench().start();
    expect(await bench.refusal("test-lead", { entryA: wayA, entryB: wayA })).toBe("no-such-place");
    expect(await bench.refusal("test-lead", { entryA: wayA, entryB: "way-9.a" as EntryId })).toBe(
      "no-such-place",
    );
  });
});

describe("while assessed work is open", () => {
  it("lead tester and walk are refused, whoever stands at the bench, and nothing of them is shown", async () => {
    const bench = await (
      await new TestBench({ parts: { board: boardWithProbes() } }).start()
    ).isWiring("assessed");
    bench.port.byHand({ in: leadsOf(wayA, socketA) });
    const ask = async () => [
      await bench.refusal("test-lead", { entryA: wayA, entryB: socketA }),
      await bench.refusal("walk-test", { isOn: true }),
    ];
    expect(await ask()).toEqual(["not-in-assessed", "not-in-assessed"]);
    await bench.does("sign-out", {});
    expect(await ask()).toEqual(["not-in-assessed", "not-in-assessed"]);
    await bench.does("sign-in", { by: "guest" });
    expect(await ask()).toEqual(["not-in-assessed", "not-in-assessed"]);
    expect(bench.port.requests.filter(({ type }) => type === "test-lead" || type === "walk-test")).toEqual(
      [],
    );
    bench.port.breaks("socket-2.a.L" as ContactId, "stuck-low");
    expect(bench.view().boardHealth).toEqual({ faults: [stuckAt("socket-2.a.L")] });
  });

  it("a lead tested a moment before is not shown", async () => {
    const bench = await new TestBench().start();
    await bench.does("test-lead", { entryA: wayA, entryB: socketA });
    expect(bench.view().boardHealth?.lead).toBeDefined();
    await bench.isWiring("assessed");
    expect(JSON.stringify(bench.view())).not.toContain("boardHealth");
  });
});

describe("with the scanner's own process", () => {
  let childPath = "";
  beforeAll(async () => {
    const { path, remove } = await bundle("hardware/scan/scanner-child.ts");
    childPath = path;
    return remove;
  });

  async function benchOf(boardName: string, more: Partial<ScannerClientOptions> = {}): Promise<Screen> {
    const { board, bytes } = readBoardFile(`hardware/boards/${boardName}.json`);
    const port = new ScannerClient({
      start: scannerProcess(childPath),
      lines: "simulated",
      timers: systemTimers,
      note: () => undefined,
      ...more,
    });
    const { url } = await testServer({ parts: { board, boardBytes: bytes, port, timers: systemTimers } });
    const screen = new Screen(url);
    await screen.sees(({ state }) => state === "ready");
    return screen;
  }

  it("the self-check of an empty workshop board goes through all of its lines and finds nothing", async () => {
    const screen = await benchOf("workshop");
    await screen.does("self-check");
    const done = await screen.sees(({ selfCheck }) => selfCheck?.isDone === true);
    expect(done.boardHealth).toEqual({
      selfCheck: { doneCount: 206, totalCount: 206, isDone: true },
      faults: [],
    });
  });

  it("a contact broken from the start is named by its station and contact", async () => {
    const screen = await benchOf("workshop", {
      faults: [{ contact: "socket-1.a.L" as ContactId, fault: "stuck-low" }],
    });
    await screen.does("self-check");
    const done = await screen.sees(({ selfCheck }) => selfCheck?.isDone === true);
    expect(done.boardHealth?.faults).toEqual([stuck]);
  });

  it("a probe on the board is told, and a lead with an open core with the code of its plug", async () => {
    const screen = await benchOf("workshop-coded");
    await screen.does("walk-test", { isOn: true });
    await screen.does("probe", { probe: "red", at: "socket-1.front.L" });
    const touched = await screen.sees(({ boardHealth }) => boardHealth?.walk?.touched.length === 1);
    expect(touched.boardHealth?.walk).toEqual({ isOn: true, touched: ["socket-1.front.L"], leftCount: 203 });
    await screen.does("probe", { probe: "red", at: null });

    await screen.does("sign-in", { by: "guest" });
    await screen.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await screen.does("accept-caution");
    await screen.does("go-to-step", { step: "wire" });
    await screen.does("plug-cable", { entryA: wayA, entryB: socketA, csaMm2: 2.5 });
    await screen.sees(({ attempt }) => attempt?.cables[0]?.csaMm2 === 2.5);
    await screen.does("test-lead", { entryA: wayA, entryB: socketA });
    const whole = await screen.sees(({ boardHealth }) => boardHealth?.lead?.joined.length === 3);
    expect(whole.boardHealth?.lead?.codes).toEqual([
      { entry: wayA, code: 3, csaMm2: 2.5 },
      { entry: socketA, code: 3, csaMm2: 2.5 },
    ]);
    await screen.does("pull", { what: "lead", contactA: "way-1.a.E", contactB: "socket-1.a.E" });
    const open = await screen.sees(({ boardHealth }) => boardHealth?.lead?.joined.length === 2);
    expect(open.boardHealth?.lead?.open).toEqual(["way-1.a.E", "socket-1.a.E"]);
  });
});

describe("a coded cable on the simulated board", () => {
  const { board } = readBoardFile("hardware/boards/workshop-coded.json");
  const cores = (code: number): string[] => {
    return leadsOfCable(board, wayA, socketA, code)
      .map(([from]) => from.slice(from.lastIndexOf(".") + 1))
      .sort();
  };

  it("joins the cores its code lists and no others", () => {
    // Code 3 is twin-and-earth; code 7 is three-core-and-earth: brown, black, grey, earth. It has no blue core.
    expect(cores(3)).toEqual(["E", "L", "N"]);
    expect(cores(7)).toEqual(["E", "L"]);
  });
});
