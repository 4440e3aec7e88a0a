import { describe, expect, it } from "vitest";
import { deskEn, type DeskKey } from "../../../kiosk/desk/desk-en.ts";
import { differenceMarks } from "../../../kiosk/desk/difference-marks.ts";
import { wiringDifferences } from "../../../kiosk/desk/wiring-differences.ts";
import type { Fact, SensedCable } from "../../../shared/protocol/bench-view.ts";
import { fillGaps } from "../../../shared/text/fill-gaps.ts";
import { english } from "../plan/english.ts";

const cable = (id: string, csaMm2: number, roles = ["L", "N", "E"]): SensedCable => {
  const [from = "", to = ""] = id.split("~");
  const conductors = roles.map((role) => ({ from: `${from}.${role}`, to: `${to}.${role}` }));
  return { id, from, to, csaMm2, conductors, path: [] } as unknown as SensedCable;
};
const a = cable("socket-1.a~way-1.a", 2.5);
const b = cable("socket-1.b~socket-2.a", 2.5);

describe("what differs between two wirings", () => {
  it("is nothing where they are alike", () => {
    expect(wiringDifferences({ cables: [a, b] }, { cables: [b, a] })).toEqual([]);
  });

  it("is a cable, a core or a size, each told for the side that has it", () => {
    const open = cable(b.id, 2.5, ["N", "E"]);
    const thin = cable(a.id, 1.5);
    expect(wiringDifferences({ cables: [a, b] }, { cables: [thin, open] })).toEqual([
      { kind: "only-left", what: "core", id: "socket-1.b.L~socket-2.a.L" },
      { kind: "other-size", id: a.id, leftMm2: 2.5, rightMm2: 1.5 },
    ]);
    expect(wiringDifferences({ cables: [a] }, { cables: [a, b] })).toEqual([
      { kind: "only-right", what: "cable", id: b.id },
    ]);
  });
});

describe("the marks on two plans", () => {
  const words = {
    t: (key: DeskKey, facts: Record<string, Fact> = {}) =>
      fillGaps(deskEn[key], (name) => facts[name]?.toString()),
  };
  const marksOf = (left: SensedCable[], right: SensedCable[]) => {
    const { left: l, right: r } = differenceMarks(
      wiringDifferences({ cables: left }, { cables: right }),
      words,
      english,
    );
    return { left: Object.fromEntries(l), right: Object.fromEntries(r) };
  };

  it("say on the cable itself what only one side has, on both sides which cores and that the size is another", () => {
    expect(marksOf([a, b], [a])).toEqual({ left: { [b.id]: "only here" }, right: {} });
    expect(marksOf([a, b], [a, cable(b.id, 1.5, ["E"])])).toEqual({
      left: { [b.id]: "other size, with L, N" },
      right: { [b.id]: "other size, without L, N" },
    });
    expect(marksOf([a], [a])).toEqual({ left: {}, right: {} });
  });

  it("name a core that lands on another contact by both of its letters", () => {
    const crossed = { ...b, conductors: [{ from: "socket-1.b.L", to: "socket-2.a.N" }] } as SensedCable;
    const straight = cable(b.id, 2.5, ["L"]);
    expect(marksOf([straight], [crossed])).toEqual({
      left: { [b.id]: "with L, without L–N" },
      right: { [b.id]: "without L, with L–N" },
    });
  });
});
