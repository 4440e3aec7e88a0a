import { describe, expect, it } from "vitest";
import { wiringDifferences } from "../../../kiosk/desk/wiring-differences.ts";
import type { SensedCable } from "../../../shared/protocol/bench-view.ts";

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
