import { describe, expect, it } from "vitest";
import { contactId, entryId, stationId } from "../../../shared/board/ids.ts";
import { rules } from "../../../shared/rules/index.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { type Rule, ruleIds } from "../../../shared/rules/rule.ts";
import type { Requirement, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { ring } from "./table.ts";
import { wire } from "./wire.ts";

const found = (wiring: Wiring, pack?: readonly Rule[]): string[] =>
  judge(wiring, pack).findings.map(({ weight, rule, causes }) => `${weight} ${rule} ${causes[0]?.id ?? ""}`);
const hidden = (wiring: Wiring): string[] =>
  judge(wiring).suppressed.map(({ rule, by }) => `${rule} by ${by.slice(0, by.indexOf("/"))}`);
const only = (...ids: string[]): Rule[] => rules.filter(({ id }) => ids.includes(id));
const second = (words: string): string[] => [
  ring[0]!,
  `socket-1.b socket-2.a 8m ${words}`,
  ring[2]!,
  ring[3]!,
];

describe("a verdict", () => {
  it("names the pack and every rule it ran, in the order of causes", () => {
    const { packVersion, rulesRun } = judge(wire(ring));
    expect(packVersion).toMatch(/^uk-/);
    expect(rulesRun).toEqual(ruleIds.filter((id) => rulesRun.includes(id)));
    expect(rulesRun).toEqual(rules.map(({ id }) => id));
  });

  it("has the heaviest finding first", () => {
    const wiring = wire([...second("-E"), "socket-1.c socket-4.a", "socket-1.d socket-5.a -E"]);
    expect(found(wiring)).toEqual([
      "danger cpc-missing socket-1.d.E~socket-5.a.E",
      "fix ring-open socket-1.b.E~socket-2.a.E",
      "fix spur-per-point socket-1",
    ]);
  });

  it("can be asked for with some rules alone", () => {
    expect(found(wire(second("1.5 -E")), only("ring-open"))).toEqual([
      "fix ring-open socket-1.b.E~socket-2.a.E",
    ]);
  });
});

describe("one cause", () => {
  it("gives one finding: crossed cores that short are a short, and what follows from it is kept with it", () => {
    const crossed = wire(second("L:N N:L E:E"));
    expect(found(crossed)).toEqual(["danger short socket-1.b.L~socket-2.a.N"]);
    expect(hidden(crossed)).toEqual(["polarity by short", "ring-open by short"]);
  });

  it("mended alone brings the next out: sized up, a row of spur points is still a row", () => {
    const wired = (size: string) =>
      found(
        wire(["way-1.a socket-1.a 4", `socket-1.b socket-2.a ${size}`, `socket-2.b socket-3.a ${size}`]),
        [...only("spur-on-spur", "radial-cable", "least-size")],
      );
    expect(wired("1.5")).toEqual(["fix spur-on-spur socket-2.b~socket-3.a"]);
    expect(wired("4")).toEqual([]);
  });

  it("mended alone brings the next out: a core put back shows the ring that is open in the same cable's earth", () => {
    const both = wire([ring[0]!, "socket-1.b socket-2.a 8m -N", "socket-2.b socket-3.a 8m -N", ring[3]!]);
    expect(found(both)).toEqual(["danger conductor-missing socket-1.b.N~socket-2.a.N"]);
    expect(hidden(both)).toEqual(["ring-open by conductor-missing", "ring-open by conductor-missing"]);
    const one = wire([ring[0]!, ring[1]!, "socket-2.b socket-3.a 8m -N", ring[3]!]);
    expect(found(one)).toEqual(["fix ring-open socket-2.b.N~socket-3.a.N"]);
  });

  it("is never hidden by something lighter", () => {
    const note: Rule = {
      id: "short",
      variants: { seen: "note" },
      source: { kind: "common practice, no source" },
      check: () => [
        {
          kind: "evidence",
          variant: "seen",
          causes: [{ kind: "conductor", id: "socket-1.b.E~socket-2.a.E" }],
          places: [],
          facts: {},
        },
      ],
    };
    expect(found(wire(second("-E")), [note, ...only("ring-open")])).toEqual([
      "fix ring-open socket-1.b.E~socket-2.a.E",
      "note short socket-1.b.E~socket-2.a.E",
    ]);
  });

  it("is hidden by nothing that is hidden itself", () => {
    const at = (id: Rule["id"], ...causes: string[]): Rule => ({
      id,
      variants: { seen: "fix" },
      source: { kind: "common practice, no source" },
      check: () => [
        {
          kind: "evidence",
          variant: "seen",
          causes: causes.map((cause) => ({ kind: "cable" as const, id: cause })) as [
            { kind: "cable"; id: string },
          ],
          places: [],
          facts: {},
        },
      ],
    });
    const pack = [at("ring-open", "a~b"), at("ring-cable", "a~b", "c~d"), at("radial-cable", "c~d")];
    expect(found(wire([]), pack)).toEqual(["fix ring-open a~b", "fix radial-cable c~d"]);
    expect(found(wire([]), pack.slice(1))).toEqual(["fix ring-cable a~b"]);
  });

  it("in a conductor does not keep back a danger at another one", () => {
    const wiring = wire(["way-1.a socket-1.a 4 L:N N:L", "socket-1.b socket-2.a 4"]);
    expect(found(wiring)).toEqual([
      "danger polarity socket-1.a.L~way-1.a.N",
      "danger cpc-missing socket-1.a.E~way-1.a.E",
    ]);
  });

  it("explains why a point is not served, and that is then kept with it", () => {
    const wants: Requirement[] = [{ kind: "served", stations: ["socket-1", "socket-2"].map(stationId) }];
    const dead = (line: string) => wire([line, "socket-1.b socket-2.a 4"], { wants });
    expect(found(dead("way-1.a socket-1.a 4 -N"))).toEqual([
      "danger conductor-missing socket-1.a.N~way-1.a.N",
    ]);
    expect(found(dead("way-1.a socket-1.a 4 L:N N:L E:E"))).toEqual([
      "danger polarity socket-1.a.L~way-1.a.N",
    ]);
    // With no cable at all there is nothing else to say.
    expect(found(wire(["way-1.a socket-1.a 4"], { wants }))).toEqual(["fix not-served socket-2"]);
  });

  it("of one fault at an appliance does not keep back another that would stay", () => {
    const wiring = wire(["way-1.a heater-1.a 44m 4"], {
      settings: { "heater-1": { appliance: "other" } },
      loads: [{ station: stationId("heater-1"), powerW: 6000 }],
    });
    const long = { ...wiring, cables: wiring.cables.map((cable) => ({ ...cable, lengthM: 120 })) };
    expect(judge(long).findings.map(({ rule }) => rule)).toEqual(["isolation", "volt-drop", "fault-loop"]);
  });

  const on40 = { "way-1": { deviceRatingA: 40 } };
  const way = stationId("way-1");
  it.each([
    {
      what: "the order of its tests",
      by: "ring-device",
      rule: "test-order",
      wiring: wire(ring, {
        settings: on40,
        readings: [
          { test: "insulation", way, isOverRange: true },
          { test: "ring-step-1", way },
        ],
      }),
    },
    {
      what: "a reading taken for the wrong thing",
      by: "ring-device",
      rule: "reading-misjudged",
      wiring: wire(ring, {
        settings: on40,
        readings: [{ test: "insulation", way, insulationMegohm: 0.2, judged: "pass" }],
      }),
    },
    {
      what: "the floor it serves",
      by: "ring-bridged",
      rule: "floor-area",
      wiring: wire([...ring, "socket-1.c socket-3.c"], { settings: { "way-1": { floorAreaM2: 120 } } }),
    },
    {
      what: "the load at its point",
      by: "spur-per-point",
      rule: "point-load",
      wiring: wire([...ring, "socket-1.c socket-4.a", "socket-1.d socket-5.a"], {
        loads: [{ station: stationId("socket-1"), powerW: 6000 }],
      }),
    },
    {
      what: "the load behind its fuse",
      by: "wrong-side",
      rule: "fused-load",
      wiring: wire([...ring, "socket-1.c fcu-1.c", "fcu-1.a socket-4.a"], {
        loads: [{ station: stationId("socket-4"), powerW: 4000 }],
      }),
    },
  ])(
    "does not hide $what, which nothing it asks for would mend ($rule beside $by)",
    ({ by, rule, wiring }) => {
      const told = judge(wiring).findings.map((finding) => finding.rule);
      expect(told).toContain(by);
      expect(told).toContain(rule);
    },
  );

  it("has no order among the rules after the last that hides", () => {
    const wiring = wire([...ring, "socket-1.c socket-1.d L:L"], { taskStations: [stationId("way-1")] });
    expect(found(wiring, only("self-lead", "outside-task"))).toContain("fix self-lead socket-1.c~socket-1.d");
    expect(found(wiring, only("self-lead", "outside-task"))).toContain(
      "note outside-task socket-1.c~socket-1.d",
    );
  });
});

describe("figures", () => {
  it("say what a cable is, may carry, and which device or fuse it relies on", () => {
    const { cables } = judge(
      wire([...ring, "socket-1.c fcu-1.a 6m method-100", "fcu-1.c socket-4.a 1.5 3m"]),
    ).figures;
    // BS 7671 Table 4D5: 2.5 mm² by method 100 carries 21 A, 1.5 mm² clipped direct 20 A.
    expect(cables["fcu-1.a~socket-1.c" as never]).toMatchObject({
      csaMm2: 2.5,
      lengthM: 6,
      ratingA: 21,
      deviceA: 32,
      deviceAt: "way-1",
    });
    expect(cables["fcu-1.c~socket-4.a" as never]).toMatchObject({
      ratingA: 20,
      deviceA: 13,
      deviceAt: "fcu-1",
    });
  });

  it("leave out what nobody has said", () => {
    const { cables } = judge(wire(second("?"))).figures;
    expect(cables["socket-1.b~socket-2.a" as never]).not.toHaveProperty("ratingA");
  });
});

describe("what a task asks for", () => {
  const asks = (want: Requirement, lines = ring, extras = {}) =>
    judge(wire(lines, { ...extras, wants: [want] })).requirements.map(({ answer, places }) => [
      answer,
      places.map(({ id }) => id),
    ])[0];
  const ids = (...names: string[]) => names.map(stationId);

  it("is that points are served", () => {
    expect(asks({ kind: "served", stations: ids("socket-1", "socket-2") })).toEqual(["met", []]);
    expect(asks({ kind: "served", stations: ids("socket-1", "socket-9") })).toEqual([
      "not-yet",
      ["socket-9"],
    ]);
  });

  it("is that points are on one circuit, or on the circuit of one way", () => {
    const two = [...ring, "way-2.a socket-4.a"];
    expect(asks({ kind: "one-circuit", stations: ids("socket-1", "socket-3") }, two)).toEqual(["met", []]);
    expect(asks({ kind: "one-circuit", stations: ids("socket-1", "socket-4") }, two)).toEqual([
      "not-yet",
      ["socket-4"],
    ]);
    const way = stationId("way-2");
    expect(asks({ kind: "one-circuit", stations: ids("socket-1"), way }, two)).toEqual([
      "not-yet",
      ["socket-1"],
    ]);
  });

  it("is that a circuit is a ring, closed in line, neutral and earth", () => {
    const want: Requirement = { kind: "shape", of: stationId("socket-1"), shape: "ring" };
    expect(asks(want)).toEqual(["met", []]);
    expect(asks(want, second("-E"))).toEqual(["not-yet", ["socket-1"]]);
    expect(asks(want, [...ring, "socket-1.c socket-3.c"])).toEqual(["not-yet", ["socket-1"]]);
    expect(asks(want, ["way-1.a socket-1.a 4"])).toEqual(["not-yet", ["socket-1"]]);
    expect(asks(want, ["way-2.a socket-2.a 4"], { also: ["socket-1"] })).toEqual(["not-yet", ["socket-1"]]);
  });

  it("is that a circuit is a radial, by any point of it, behind a fuse too", () => {
    const radial = ["way-1.a socket-1.a 4", "socket-1.b fcu-1.a", "fcu-1.c socket-2.a 1.5"];
    const want = (of: string): Requirement => ({ kind: "shape", of: stationId(of), shape: "radial" });
    expect(asks(want("socket-1"), radial)).toEqual(["met", []]);
    expect(asks(want("socket-2"), radial)).toEqual(["met", []]);
    expect(asks(want("socket-1"))).toEqual(["not-yet", ["socket-1"]]);
  });

  it("is that cables found are kept", () => {
    const kept = (id: string): Requirement => ({ kind: "kept", cables: [id as never] });
    expect(asks(kept("socket-1.b~socket-2.a"))).toEqual(["met", []]);
    expect(asks(kept("socket-1.c~socket-2.c"))).toEqual(["not-yet", ["socket-1.c~socket-2.c"]]);
  });

  it("is that a way has one of some devices", () => {
    const device = (...ratingA: number[]): Requirement => ({
      kind: "device",
      way: stationId("way-1"),
      ratingA,
    });
    expect(asks(device(30, 32))).toEqual(["met", []]);
    expect(asks(device(20))).toEqual(["not-yet", ["way-1"]]);
  });

  it("is that readings are on record", () => {
    const want: Requirement = { kind: "readings", way: stationId("way-1"), tests: ["insulation"] };
    const readings = [
      { test: "insulation", way: stationId("way-1"), insulationMegohm: 999, isOverRange: true },
    ];
    expect(asks(want)).toEqual(["not-yet", ["way-1"]]);
    expect(asks(want, ring, { readings })).toEqual(["met", []]);
  });

  it("is that the faults of a hunt are named", () => {
    const want: Requirement = { kind: "fault-named", faults: ["open-core socket-1"] };
    expect(asks(want)?.[0]).toBe("not-yet");
    expect(asks(want, ring, { namedFaults: ["open-core socket-1"] })?.[0]).toBe("met");
  });
});

describe("the proposal", () => {
  const serves: Requirement[] = [{ kind: "served", stations: [stationId("socket-1")] }];
  const proposal = (lines: string[], extras = {}) =>
    judge(wire(lines, { wants: serves, ...extras })).proposal;

  it("is that all is met where all that is asked for is there and nothing has to be mended", () => {
    expect(proposal(ring)).toBe("met");
  });

  it("is so too with something to justify or to note, which an assessor ticks", () => {
    expect(
      proposal([...ring, "way-1.c socket-4.a 8m", "socket-4.b socket-5.a 8m", "socket-5.b way-1.d 8m"]),
    ).toBe("met");
  });

  it("is not yet with a fix, a danger, a requirement that is not met, or a value that nobody has said", () => {
    expect(proposal(second("-E"))).toBe("not-yet");
    expect(proposal([...ring, "socket-1.c socket-2.c N:E"])).toBe("not-yet");
    expect(proposal(ring, { wants: [{ kind: "served", stations: [stationId("socket-9")] }] })).toBe(
      "not-yet",
    );
    expect(proposal(second("?"))).toBe("not-yet");
  });

  it("is that nothing can be said while a contact in use cannot be read", () => {
    const unknown = [contactId(entryId("socket-1", "a"), "E")];
    expect(proposal(ring, { unknown })).toBe("cannot-say");
  });

  it("does not hang on a contact that cannot be read where nothing is plugged and nothing is wanted", () => {
    const unknown = [contactId(entryId("socket-9", "a"), "L")];
    expect(proposal(ring, { unknown, also: ["socket-9"] })).toBe("met");
  });
});

describe("a contact that cannot be read", () => {
  const unknown = [contactId(entryId("socket-2", "a"), "E")];

  it("leaves a missing earth undetermined, never found", () => {
    const { findings, undetermined } = judge(
      wire(["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4 -E"], { unknown }),
    );
    expect(findings).toEqual([]);
    expect(undetermined).toContainEqual({
      rule: "cpc-missing",
      place: { kind: "contact", id: "socket-2.a.E" },
      field: "contact",
      cause: "board",
    });
  });

  it("does not hide a danger that stands whatever is plugged there", () => {
    const wiring = wire([...ring, "socket-1.c socket-3.c L:E"], { unknown });
    expect(found(wiring)).toEqual(["danger short socket-1.c.L~socket-3.c.E"]);
  });

  it("does not turn a ring into two legs: its shape cannot be said", () => {
    const { requirements } = judge(
      wire(ring, { unknown, wants: [{ kind: "shape", of: stationId("socket-1"), shape: "ring" }] }),
    );
    expect(requirements[0]?.answer).toBe("cannot-say");
  });
});

describe("a cable stated twice", () => {
  it("is one cable with the cores of both", () => {
    const twice = [
      ring[0]!,
      "socket-1.b socket-2.a 8m L:L",
      "socket-2.a socket-1.b 8m N:N E:E",
      ring[2]!,
      ring[3]!,
    ];
    expect(found(wire(twice))).toEqual([]);
  });

  it("is of the smaller of two sizes", () => {
    const twice = [
      ring[0]!,
      "socket-1.b socket-2.a 8m 2.5",
      "socket-2.a socket-1.b 8m 1.5",
      ring[2]!,
      ring[3]!,
    ];
    expect(found(wire(twice), only("ring-cable"))).toEqual(["fix ring-cable socket-1.b~socket-2.a"]);
  });
});

describe("a cable to a station that is not there", () => {
  it("is left out, and the rest is judged", () => {
    const wiring = wire(ring);
    const from = entryId("socket-9", "a");
    expect(found({ ...wiring, cables: [...wiring.cables, { from, to: entryId("socket-1", "c") }] })).toEqual(
      [],
    );
  });
});
