import { describe, expect, it } from "vitest";
import { contactId, entryId, stationId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { Requirement, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { withoutSettings } from "./check-electrical.ts";
import { load, ring } from "./table.ts";
import { type Extras, wire } from "./wire.ts";

interface Row {
  title: string;
  lines: string[];
  extras?: Extras;
  gives: string;
}

const ids = (...names: string[]) => names.map(stationId);

/** The answer to one requirement and where: `met`, `not-yet socket-1`. */
const answer = (want: Requirement, { lines, extras = {} }: Pick<Row, "lines" | "extras">): string => {
  const wiring: Wiring = wire(lines, { ...extras, wants: [want] });
  return judge(wiring)
    .requirements.map((result) => [result.answer, ...result.places.map(({ id }) => id)].join(" "))
    .join();
};

const asked = (want: Requirement, rows: Row[]): void => {
  it.each(rows)("$title: $gives", (row) => {
    expect(answer(want, row)).toBe(row.gives);
  });
};

const unread = (station: string, letter: string): Extras => ({
  unknown: [contactId(entryId(station, letter), "L")],
});
const radial = ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4", "socket-2.b socket-3.a 4"];

describe("a point in the ring itself", () => {
  asked({ kind: "in-ring", stations: ids("socket-1", "socket-3") }, [
    { title: "looped in", lines: ring, gives: "met" },
    { title: "looped in the other way round", lines: [...ring].reverse(), gives: "met" },
    {
      title: "on a spur from it",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "socket-2.b way-1.b", "socket-2.c socket-3.a"],
      gives: "not-yet socket-3",
    },
    { title: "a radial", lines: radial, gives: "not-yet socket-1 socket-3" },
    {
      title: "a loop at the end of a leg is no ring",
      lines: [
        "way-1.a socket-2.a 4",
        "socket-2.b socket-1.a 4",
        "socket-1.b socket-3.a 4",
        "socket-3.b socket-2.c 4",
      ],
      gives: "not-yet socket-1 socket-3",
    },
    {
      title: "a contact that cannot be read",
      lines: ring,
      extras: unread("socket-2", "a"),
      gives: "cannot-say",
    },
  ]);
});

describe("a point alone on an unfused spur", () => {
  asked({ kind: "unfused-spur", stations: ids("socket-4") }, [
    { title: "from a point of the ring", lines: [...ring, "socket-1.c socket-4.a"], gives: "met" },
    { title: "from the way", lines: [...ring, "way-1.c socket-4.a"], gives: "met" },
    {
      title: "by a junction box",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-4.a"],
      gives: "met",
    },
    { title: "of cable larger than it needs", lines: [...ring, "socket-1.c socket-4.a 4"], gives: "met" },
    { title: "of a size nobody has said", lines: [...ring, "socket-1.c socket-4.a ?"], gives: "met" },
    {
      title: "in the ring",
      lines: [...ring.slice(0, 3), "socket-3.b socket-4.a", "socket-4.b way-1.b"],
      gives: "not-yet socket-4",
    },
    {
      title: "with another point before it",
      lines: [...ring, "socket-1.c socket-5.a", "socket-5.b socket-4.a"],
      gives: "not-yet socket-4",
    },
    {
      title: "with another point beside it",
      lines: [...ring, "socket-1.c box-1.a", "box-1.b socket-5.a", "box-1.c socket-4.a"],
      gives: "not-yet socket-4",
    },
    {
      title: "behind a fuse",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a"],
      gives: "not-yet socket-4",
    },
    { title: "not there", lines: ring, extras: { also: ["socket-4"] }, gives: "not-yet socket-4" },
    { title: "slim, from a 4 mm² radial", lines: [...radial, "socket-2.c socket-4.a"], gives: "met" },
    {
      title: "as large as a 4 mm² radial it leaves",
      lines: [...radial, "socket-2.c socket-4.a 4"],
      gives: "met",
    },
    { title: "the end of a row", lines: [...radial, "socket-3.b socket-4.a 4"], gives: "not-yet socket-4" },
    { title: "the only leg of a way", lines: ["way-1.a socket-4.a"], gives: "not-yet socket-4" },
    {
      title: "a branch of a radial whose size nobody has said",
      lines: [...radial, "socket-2.c socket-4.a ?"],
      gives: "cannot-say socket-4",
    },
    {
      title: "a contact that cannot be read",
      lines: [...ring, "socket-1.c socket-4.a"],
      extras: unread("socket-4", "a"),
      gives: "cannot-say",
    },
  ]);

  it("is never said of a connection unit: that is a fused spur", () => {
    const lines = [...ring, "socket-1.c fcu-1.a", "fcu-1.c socket-4.a"];
    expect(answer({ kind: "unfused-spur", stations: ids("fcu-1") }, { lines })).toBe("not-yet fcu-1");
  });
});

describe("a point fed through an FCU", () => {
  const small = [
    ...ring,
    "socket-1.c fcu-1.a",
    "fcu-1.c socket-4.a",
    "socket-4.b fcu-2.a",
    "fcu-2.c lamp-1.a 1",
  ];
  asked({ kind: "through-fcu", stations: ids("socket-4", "lamp-1"), fcu: stationId("fcu-1") }, [
    { title: "straight, and behind a further unit", lines: small, gives: "met" },
    {
      title: "through another unit",
      lines: [...ring, "socket-1.c fcu-2.a", "fcu-2.c socket-4.a", "socket-4.b lamp-1.a 1"],
      gives: "not-yet socket-4 lamp-1",
    },
    {
      title: "one of them straight off the ring",
      lines: [...ring, "socket-1.c socket-4.a", "socket-2.c fcu-1.a", "fcu-1.c lamp-1.a 1"],
      gives: "not-yet socket-4",
    },
    {
      title: "from the supply side, past its fuse",
      lines: [
        ...ring,
        "socket-1.c fcu-1.a",
        "fcu-1.b socket-4.a",
        "socket-4.b fcu-2.a",
        "fcu-2.c lamp-1.a 1",
      ],
      gives: "not-yet socket-4 lamp-1",
    },
    {
      title: "a unit that is reversed is still passed",
      lines: [...ring, "socket-1.c fcu-1.c", "fcu-1.a socket-4.a", "socket-4.b lamp-1.a 1"],
      gives: "met",
    },
    {
      title: "through either of two units",
      lines: [...small.slice(0, 6), "socket-2.c fcu-2.a", "fcu-2.c socket-4.c", "socket-4.b lamp-1.a 1"],
      gives: "not-yet socket-4 lamp-1",
    },
    {
      title: "a contact that cannot be read",
      lines: small,
      extras: unread("fcu-1", "a"),
      gives: "cannot-say",
    },
  ]);

  it("may be any unit where the task names none", () => {
    const want: Requirement = { kind: "through-fcu", stations: ids("lamp-1") };
    expect(answer(want, { lines: small })).toBe("met");
    expect(answer(want, { lines: [...ring, "socket-1.c lamp-1.a 1"] })).toBe("not-yet lamp-1");
  });
});

describe("a point that can be switched off by itself", () => {
  const fed = (...more: string[]) => [...ring, "socket-1.c fcu-1.a", "fcu-1.c boiler-1.a 1.5", ...more];
  const fcu = (switched?: boolean): Extras => ({
    settings: { "fcu-1": { fuseRatingA: 3, ...(switched === undefined ? {} : { switched }) } },
  });
  const straight = ["way-1.a isolator-1.a 4", "isolator-1.c boiler-1.a 4"];
  asked({ kind: "own-switch", stations: ids("boiler-1") }, [
    { title: "by a switched unit", lines: fed(), extras: fcu(true), gives: "met" },
    {
      title: "by an unswitched unit: a fuse is no switch",
      lines: fed(),
      extras: fcu(false),
      gives: "not-yet boiler-1",
    },
    { title: "by a unit of which it is not said", lines: fed(), extras: fcu(), gives: "not-yet boiler-1" },
    { title: "by a double-pole switch", lines: straight, gives: "met" },
    {
      title: "by a switched unit that is reversed, which another rule names",
      lines: [...ring, "socket-1.c fcu-1.c", "fcu-1.a boiler-1.a 1.5"],
      extras: fcu(true),
      gives: "met",
    },
    {
      title: "by a switched unit that cuts off a socket outlet too",
      lines: fed("fcu-1.d socket-4.a 1.5"),
      extras: fcu(true),
      gives: "not-yet boiler-1",
    },
    {
      title: "by nothing, straight on the ring",
      lines: [...ring, "socket-1.c boiler-1.a"],
      gives: "not-yet boiler-1",
    },
    {
      title: "by a switched unit that a second feed passes",
      lines: fed("socket-2.c boiler-1.a"),
      extras: fcu(true),
      gives: "not-yet boiler-1",
    },
    {
      title: "by a unit whose neutral is not broken",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c boiler-1.a 1.5 -N", "socket-1.d boiler-1.a N:N"],
      extras: fcu(true),
      gives: "not-yet boiler-1",
    },
    {
      title: "by a double-pole switch, a contact not read",
      lines: straight,
      extras: unread("isolator-1", "a"),
      gives: "cannot-say boiler-1",
    },
  ]);

  const lights = [...ring, "socket-1.c fcu-1.a", "fcu-1.c lamp-1.a 1", "lamp-1.b lamp-2.a 1"];
  asked({ kind: "own-switch", stations: ids("lamp-1", "lamp-2"), by: stationId("fcu-1") }, [
    {
      title: "two lights together, by the unit that is named",
      lines: lights,
      extras: fcu(true),
      gives: "met",
    },
    {
      title: "two lights, the unit without a switch",
      lines: lights,
      extras: fcu(false),
      gives: "not-yet lamp-1 lamp-2",
    },
    {
      title: "one of the lights past the unit",
      lines: [...lights.slice(0, 6), "socket-2.c lamp-2.a 1"],
      extras: fcu(true),
      gives: "not-yet lamp-2",
    },
  ]);

  const drop = ["way-1.a rose-1.a 1", "rose-1.s switch-1.s 1"];
  const twoWay: Extras = {
    settings: { "switch-1": { switching: "two-way" }, "switch-2": { switching: "two-way" } },
  };
  const halfWay = { lines: [...drop, "switch-1.u switch-2.u 1 -strap1"], extras: twoWay };
  it.each(ids("switch-1", "switch-2"))("is so for a light from each of its two-way switches: %s", (by) => {
    const wanted: Requirement = { kind: "own-switch", stations: ids("rose-1"), by };
    expect(answer(wanted, { lines: [...drop, "switch-1.u switch-2.u 1"], extras: twoWay })).toBe("met");
    expect(answer(wanted, halfWay)).toBe("not-yet rose-1");
    const unknown = [contactId(entryId("switch-2", "u"), "strap1")];
    expect(answer(wanted, { ...halfWay, extras: { ...twoWay, unknown } })).toBe("cannot-say rose-1");
  });

  it("is so for a light with a switch in its line, and not for its neighbour on the same circuit", () => {
    const lines = ["way-1.a rose-1.a 1.5", "rose-1.b lamp-1.a 1.5", "rose-1.s switch-1.s 1.5"];
    expect(answer({ kind: "own-switch", stations: ids("rose-1") }, { lines })).toBe("met");
    expect(answer({ kind: "own-switch", stations: ids("lamp-1") }, { lines })).toBe("not-yet lamp-1");
  });
});

describe("a fuse within what the task allows", () => {
  const boiler = [...ring, "socket-1.c fcu-1.a", "fcu-1.c boiler-1.a 1.5"];
  const fused = (fuseRatingA: number): Extras => ({ settings: { "fcu-1": { fuseRatingA } } });
  asked({ kind: "fuse", stations: ids("boiler-1"), mostA: 3 }, [
    { title: "as large as allowed", lines: boiler, extras: fused(3), gives: "met" },
    { title: "smaller", lines: boiler, extras: fused(1), gives: "met" },
    { title: "larger", lines: boiler, extras: fused(5), gives: "not-yet boiler-1" },
    { title: "none", lines: [...ring, "socket-1.c boiler-1.a"], gives: "not-yet boiler-1" },
    {
      title: "in an earlier unit",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c fcu-2.a", "fcu-2.c boiler-1.a 1.5"],
      extras: { settings: { "fcu-1": { fuseRatingA: 3 }, "fcu-2": { fuseRatingA: 13 } } },
      gives: "met",
    },
    {
      title: "a contact that cannot be read",
      lines: boiler,
      extras: { ...fused(3), ...unread("fcu-1", "c") },
      gives: "cannot-say",
    },
  ]);

  it("cannot be told while nobody has said the rating", () => {
    const wants: Requirement[] = [{ kind: "fuse", stations: ids("boiler-1"), mostA: 3 }];
    const { requirements } = judge(withoutSettings(wire(boiler, { wants }), "fcu-1"));
    expect(requirements).toMatchObject([{ answer: "cannot-say", places: [{ id: "boiler-1" }] }]);
  });
});

describe("a device within what the task allows", () => {
  const want: Requirement = { kind: "device", way: stationId("way-1"), ratingA: [16, 20] };
  const on = (deviceRatingA?: number) => {
    const wiring = wire(["way-1.a socket-1.a"], { wants: [want] });
    const settings = deviceRatingA === undefined ? {} : { deviceRatingA };
    const stations = wiring.stations.map((one) => (one.id === "way-1" ? { ...one, settings } : one));
    return judge({ ...wiring, stations }).requirements.map((one) => one.answer)[0];
  };
  it.each([
    [16, "met"],
    [20, "met"],
    [32, "not-yet"],
    [undefined, "cannot-say"],
  ])("of %s A is %s", (deviceRatingA, gives) => {
    expect(on(deviceRatingA)).toBe(gives);
  });
});

describe("device, load and cable that go together", () => {
  const row = (csa: string) => [`way-1.a socket-1.a ${csa}`, `socket-1.b socket-2.a ${csa}`];
  const at = (deviceRatingA: number, ...loads: number[]): Extras => ({
    settings: { "way-1": { deviceRatingA } },
    loads: loads.map((powerW, index) => load(`socket-${index + 1}`, powerW)),
  });
  asked({ kind: "sized", way: stationId("way-1") }, [
    { title: "4.2 kW on 20 A and 2.5 mm²", lines: row("2.5"), extras: at(20, 2200, 2000), gives: "met" },
    { title: "4.2 kW on 16 A", lines: row("2.5"), extras: at(16, 2200, 2000), gives: "not-yet way-1" },
    {
      title: "2.5 mm² on 32 A",
      lines: row("2.5"),
      extras: at(32),
      gives: "not-yet socket-1.a~way-1.a socket-1.b~socket-2.a",
    },
    { title: "no circuit yet", lines: [], extras: { also: ["way-1"] }, gives: "not-yet way-1" },
    {
      title: "a mistake on another way",
      lines: [...row("2.5"), "way-2.a socket-4.a", "socket-4.b socket-5.a"],
      extras: at(20),
      gives: "met",
    },
    {
      title: "a size nobody has said",
      lines: row("?"),
      extras: at(20),
      gives: "cannot-say socket-1.a~way-1.a socket-1.b~socket-2.a",
    },
    {
      title: "a contact that cannot be read",
      lines: row("2.5"),
      extras: { ...at(20), ...unread("socket-2", "a") },
      gives: "cannot-say",
    },
  ]);
});

describe("no cable larger than it needs to be", () => {
  const sizes = [1.5, 2.5, 4, 6];
  const strict: Requirement = { kind: "thrift", csaMm2: sizes, spareSizes: 0 };
  // A 4 mm² radial on 32 A; a spur of 2.5 mm² to one point is safe (On-Site Guide, Appendix H).
  const kitchen = [...radial, "socket-2.c socket-5.a 2.5", "socket-3.b socket-6.a 2.5"];
  asked(strict, [
    { title: "the radial thick, its spurs slim", lines: kitchen, gives: "met" },
    {
      title: "thick throughout",
      lines: [...radial, "socket-2.c socket-5.a 4", "socket-3.b socket-6.a 4"],
      gives: "not-yet socket-2.c~socket-5.a socket-3.b~socket-6.a",
    },
    {
      title: "the last piece of the row could be slim",
      lines: radial,
      gives: "not-yet socket-2.b~socket-3.a",
    },
    {
      title: "a ring in 4 mm²",
      lines: ring.map((line) => `${line} 4`),
      gives: "not-yet socket-1.a~way-1.a socket-1.b~socket-2.a socket-2.b~socket-3.a socket-3.b~way-1.b",
    },
    {
      title: "cable that is too weak already",
      lines: ["way-1.a socket-1.a 2.5", "socket-1.b socket-2.a 2.5"],
      gives: "met",
    },
    { title: "a ring in 2.5 mm², though 1.5 mm² is in the box", lines: ring, gives: "met" },
    {
      title: "thick where the way of running asks for it (method 101: 22 A)",
      lines: ["way-1.a socket-1.a 4 method-101", "socket-1.b socket-2.a 1.5"],
      extras: { settings: { "way-1": { deviceRatingA: 20 } } },
      gives: "met",
    },
    {
      title: "a size nobody has said",
      lines: [...radial.slice(0, 2), "socket-2.b socket-3.a ?"],
      gives: "cannot-say socket-2.b~socket-3.a",
    },
    {
      title: "a contact that cannot be read",
      lines: kitchen,
      extras: unread("socket-5", "a"),
      gives: "cannot-say",
    },
  ]);
  asked({ kind: "thrift", csaMm2: sizes }, [
    {
      title: "one size to spare is fine where the task is not strict",
      lines: ring.map((line) => `${line} 4`),
      gives: "met",
    },
    {
      title: "two sizes to spare are not",
      lines: [`${ring[0]} 6`, ...ring.slice(1)],
      gives: "not-yet socket-1.a~way-1.a",
    },
  ]);

  it("is not asked of cable that was found and has to stay", () => {
    const lines = [`${ring[0]} 4`, ...ring.slice(1)];
    const wants: Requirement[] = [strict, { kind: "kept", cables: ["socket-1.a~way-1.a" as never] }];
    expect(judge(wire(lines, { wants })).requirements.map((one) => one.answer)).toEqual(["met", "met"]);
    expect(answer(strict, { lines })).toBe("not-yet socket-1.a~way-1.a");
  });
});
