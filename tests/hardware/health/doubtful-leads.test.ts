import { describe, expect, it } from "vitest";
import { DoubtfulLeads } from "../../../hardware/health/doubtful-leads.ts";
import { boardLines } from "../../../hardware/lines/board-lines.ts";
import { contact, entry, shippedBoard } from "../scan/program-bench.ts";

const board = boardLines(shippedBoard("workshop"));
const hourMs = 3_600_000;
const far = "socket-3.a.L socket-6.b.L";
const neighbours = "socket-6.a.L socket-6.a.N";

/** Leads by the two contacts of each. */
function picture(leads: string[], { unknown = "", dead = "", coded = "", isSettled = true } = {}) {
  const contacts = (text: string) => text.split(" ").filter(Boolean).map(contact);
  return {
    groups: leads.map(contacts),
    unknown: contacts(unknown),
    deadOutputs: new Set(contacts(dead)),
    codes: coded === "" ? [] : [{ entry: entry(coded) }],
    isSettled,
  };
}

/** Looks at one picture after the other, a second apart; gives what is doubted in the last. */
function doubted(
  pictures: ReturnType<typeof picture>[],
  { touched = true }: { touched?: boolean } = {},
): string[] {
  const doubtful = new DoubtfulLeads(board);
  if (touched) doubtful.touch(0);
  return pictures
    .map((each, index) => doubtful.look(each, index * 1_000))
    .at(-1)!
    .map(({ contacts, reason }) => `${contacts.join(" ")} ${reason}`);
}

describe("a lead that nobody can be known to have plugged", () => {
  it.each([
    ["stands alone before anybody touched the board", [picture([far])], "at-start"],
    ["joins outputs side by side on the chips", [picture([]), picture([neighbours])], "neighbours"],
    [
      "comes together with a dead output at its end",
      [picture([]), picture([far], { dead: "socket-6.b.L" })],
      "one-sided",
    ],
  ])("%s", (_why, pictures, reason) => {
    expect(doubted(pictures)).toEqual([`${pictures.at(-1)!.groups[0]!.join(" ")} ${reason}`]);
  });

  it("comes when neither board nor screen was touched for an hour, and not while somebody is there", () => {
    for (const [quietMs, count] of [
      [hourMs, 1],
      [hourMs - 1, 0],
    ] as const) {
      // prettier-ignore
      const doubtful = new DoubtfulLeads(board);
      doubtful.look(picture([]), 0);
      doubtful.touch(500);
      expect(doubtful.look(picture([far]), 500 + quietMs)).toHaveLength(count);
    }
  });

  it.each([
    ["has another core of its cable beside it", [picture([far, "socket-3.a.N socket-6.b.N"])]],
    [
      "gets another core of its cable while it is doubted",
      [picture([far]), picture([far, "socket-3.a.N socket-6.b.N"])],
    ],
    [
      "was part of a cable, and is its last core in",
      [picture([far, "socket-3.a.N socket-6.b.N"]), picture([far])],
    ],
    ["has a plug that tells its code", [picture([far], { coded: "socket-6.b" })]],
    ["may have other cores that cannot be read", [picture([far], { unknown: "socket-6.b.N" })]],
    ["is pulled out and plugged in again", [picture([far]), picture([]), picture([far])]],
    [
      "goes to an output that was known to be dead",
      [picture([], { unknown: "socket-6.b.L" }), picture([far], { dead: "socket-6.b.L" })],
    ],
    ["comes while somebody works", [picture([]), picture([far])]],
  ])("is none that %s", (_why, pictures) => {
    expect(doubted(pictures)).toEqual([]);
  });

  it("stays doubted while it is only hidden: a contact that cannot be read was not pulled out", () => {
    expect(doubted([picture([far]), picture([], { unknown: far }), picture([far])])).toHaveLength(1);
  });
});

describe("a join on a board whose plugs tell their code", () => {
  const coded = boardLines(shippedBoard("workshop-coded"));
  const reasons = (pictures: ReturnType<typeof picture>[]): string[] => {
    const doubtful = new DoubtfulLeads(coded);
    doubtful.touch(0);
    return pictures
      .map((each, index) => doubtful.look(each, index * 1_000))
      .at(-1)!
      .map(({ reason }) => reason);
  };
  const cable = [far, "socket-3.a.N socket-6.b.N"];

  it("is copper of the board where no plug is in at either end, also while somebody works, and for all cores", () => {
    expect(reasons([picture([]), picture([far])])).toEqual(["no-plug"]);
    expect(reasons([picture([]), picture(cable)])).toEqual(["no-plug", "no-plug"]);
    expect(reasons([picture([]), picture([far]), picture([]), picture([far])])).toEqual(["no-plug"]);
  });

  it("is a lead with a plug at one end at least, and is not doubted while its plug goes in", () => {
    expect(reasons([picture([]), picture(cable, { coded: "socket-3.a" })])).toEqual([]);
    expect(reasons([picture([]), picture([far], { isSettled: false })])).toEqual([]);
    expect(reasons([picture([]), picture([far]), picture([far], { coded: "socket-6.b" })])).toEqual([]);
  });
});
