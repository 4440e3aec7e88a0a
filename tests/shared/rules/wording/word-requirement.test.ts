import { describe, expect, it } from "vitest";
import { cableId, entryId, stationId } from "../../../../shared/board/ids.ts";
import { languages } from "../../../../shared/text/languages.ts";
import { wordRequirement } from "../../../../shared/rules/wording/word-requirement.ts";
import { wordUndetermined } from "../../../../shared/rules/wording/word-undetermined.ts";
import type { Requirement } from "../../../../shared/wiring/wiring.schema.ts";
import { ring } from "../table.ts";
import { wire } from "../wire.ts";
import { undetermined } from "./fixture-findings.ts";

const wiring = wire(ring, { also: ["fcu-1"] });
const fcu = stationId("fcu-1");
const socket1 = stationId("socket-1");
const socket2 = stationId("socket-2");
const way = stationId("way-1");

const wanted: { requirement: Requirement; en: string; pl: string }[] = [
  {
    requirement: { kind: "served", stations: [socket1, socket2] },
    en: "Power reaches socket outlet 1 and socket outlet 2.",
    pl: "Prąd dochodzi do: gniazda 1 i gniazda 2.",
  },
  {
    requirement: { kind: "one-circuit", stations: [socket1, socket2], way },
    en: "All on one circuit, from way 1: socket outlet 1 and socket outlet 2.",
    pl: "Wszystko w jednym obwodzie, z pola 1: gniazdo 1 i gniazdo 2.",
  },
  {
    requirement: { kind: "one-circuit", stations: [socket1, socket2] },
    en: "All on one circuit: socket outlet 1 and socket outlet 2.",
    pl: "Wszystko w jednym obwodzie: gniazdo 1 i gniazdo 2.",
  },
  {
    requirement: { kind: "shape", of: socket1, shape: "ring" },
    en: "The circuit of socket outlet 1 is a ring.",
    pl: "Obwód, w którym jest gniazdo 1, to pierścień.",
  },
  {
    requirement: { kind: "shape", of: way, shape: "radial" },
    en: "The circuit of way 1 is a radial.",
    pl: "Obwód, w którym jest pole 1, jest promieniowy.",
  },
  {
    requirement: { kind: "in-ring", stations: [socket1, socket2] },
    en: "In the ring itself, not on a spur: socket outlet 1 and socket outlet 2.",
    pl: "W samym pierścieniu, nie na odgałęzieniu: gniazdo 1 i gniazdo 2.",
  },
  {
    requirement: { kind: "unfused-spur", stations: [socket1] },
    en: "Each alone on an unfused spur: socket outlet 1.",
    pl: "Osobne odgałęzienie bez bezpiecznika: gniazdo 1.",
  },
  {
    requirement: { kind: "through-fcu", stations: [socket1], fcu },
    en: "Fed through FCU 1: socket outlet 1.",
    pl: "Zasilanie przez złącze FCU 1: gniazdo 1.",
  },
  {
    requirement: { kind: "through-fcu", stations: [socket1] },
    en: "Fed through a fused connection unit (FCU): socket outlet 1.",
    pl: "Zasilanie przez złącze z bezpiecznikiem (FCU): gniazdo 1.",
  },
  {
    requirement: { kind: "own-switch", stations: [socket1], by: fcu },
    en: "Can be switched off by FCU 1 with nothing else going off: socket outlet 1.",
    pl: "Da się wyłączyć przez złącze FCU 1 tak, że nic innego nie gaśnie: gniazdo 1.",
  },
  {
    requirement: { kind: "own-switch", stations: [socket1] },
    en: "Can be switched off with nothing else going off: socket outlet 1.",
    pl: "Da się wyłączyć tak, że nic innego nie gaśnie: gniazdo 1.",
  },
  {
    requirement: { kind: "fuse", stations: [socket1], mostA: 3 },
    en: "A fuse of 3 A or less before socket outlet 1.",
    pl: "Bezpiecznik 3 A albo mniejszy przed gniazdem 1.",
  },
  {
    requirement: { kind: "sized", way },
    en: "The device of way 1 carries the load, and each cable suits the device or fuse before it.",
    pl: "Wyłącznik w polu 1 wystarcza na obciążenie, a każdy kabel pasuje do wyłącznika albo bezpiecznika przed nim.",
  },
  {
    requirement: { kind: "thrift", csaMm2: [2.5, 4], spareSizes: 0 },
    en: "No new cable is larger than it needs to be.",
    pl: "Żaden nowy kabel nie ma większego przekroju, niż trzeba.",
  },
  {
    requirement: { kind: "thrift", csaMm2: [2.5, 4] },
    en: "No new cable is more than one size larger than it needs to be.",
    pl: "Żaden nowy kabel nie ma przekroju większego, niż trzeba, o więcej niż jeden stopień.",
  },
  {
    requirement: { kind: "kept", cables: [cableId(entryId("way-1", "a"), entryId("socket-1", "a"))] },
    en: "Left as it was found: the cable from socket outlet 1 to way 1.",
    pl: "Zostaje tak, jak było: kabel od gniazda 1 do pola 1.",
  },
  {
    requirement: { kind: "device", way, ratingA: [30, 32] },
    en: "Way 1 has a device of 30 A or 32 A.",
    pl: "W polu 1 jest wyłącznik 30 A albo 32 A.",
  },
  {
    requirement: { kind: "readings", way, tests: ["insulation", "polarity"] },
    en: "Readings on record for way 1: insulation resistance and polarity.",
    pl: "Zapisane pomiary dla pola 1: rezystancja izolacji i biegunowość.",
  },
  {
    requirement: { kind: "fault-named", faults: ["open-core", "crossed-cores"] },
    en: "Faults found and named: 2 in all.",
    pl: "Usterki znalezione i nazwane: razem 2.",
  },
];

describe("what a task asks for", () => {
  it.each(wanted)("reads: $en", ({ requirement, en, pl }) => {
    expect(wordRequirement(requirement, wiring, "en")).toBe(en);
    expect(wordRequirement(requirement, wiring, "pl")).toBe(pl);
  });
});

describe("what a task asks of many places", () => {
  const many: Requirement = {
    kind: "served",
    stations: [1, 2, 3, 4, 5].map((number) => stationId(`socket-${number}`)),
  };
  const house = { stations: many.stations.map((id) => ({ id, kind: "socket-outlet" as const })) };

  it("names as many as are asked for and counts the rest", () => {
    expect(wordRequirement(many, house, "en", undefined, 3)).toBe(
      "Power reaches socket outlet 1, socket outlet 2, socket outlet 3 and 2 more.",
    );
    expect(wordRequirement(many, house, "pl", undefined, 3)).toMatch(/gniazda 3 i jeszcze 2\.$/);
  });

  it("names them all where nothing is said, and where but one would be left", () => {
    for (const mostNamed of [undefined, 4])
      expect(wordRequirement(many, house, "en", undefined, mostNamed)).toContain("and socket outlet 5.");
  });
});
const noLimit = {
  rule: "fault-loop",
  place: { kind: "station", id: "way-1" },
  field: "maximumZsOhm",
  cause: "value",
} as const;

describe("what cannot be told", () => {
  it("names the value and its place", () => {
    const item = {
      rule: "ring-cable",
      place: { kind: "cable", id: "socket-1.a~way-1.a" },
      field: "csaMm2",
      cause: "value",
    } as const;
    expect(wordUndetermined(item, wiring, "en")).toBe(
      "Cannot say yet: Undersized ring cable. Not known of the cable from socket outlet 1 to way 1: the size. Tell the bench, then check again.",
    );
  });

  // The fuses are those of the rows of Tables 41.2 and 41.4 in shared/trade/fuse-zs.ts.
  it.each([
    { deviceStandard: "BS 88-3", deviceRatingA: 25, choose: "5 A, 16 A, 20 A or 32 A, or a circuit-breaker" },
    {
      deviceStandard: "BS 88-3",
      deviceRatingA: 44,
      choose: "5 A, 16 A, 20 A, 32 A or 45 A, or a circuit-breaker",
    },
    { deviceStandard: "BS 3036", deviceRatingA: 45, choose: "5 A, 15 A, 20 A or 30 A, or a circuit-breaker" },
  ] as const)(
    "says what to choose where no table has the value: not $deviceRatingA A",
    ({ choose, ...settings }) => {
      const built = { stations: [{ id: stationId("way-1"), kind: "way", settings } as const] };
      const text = wordUndetermined(noLimit, built, "en");
      expect(text).toContain(choose);
      expect(text).not.toContain("Not known of");
    },
  );

  it("asks for an RCD where an earth electrode leaves a fuse without a limit", () => {
    const built = { ...wiring, supply: { earthing: "TT", electrodeOhm: 20 } } as const;
    expect(wordUndetermined(noLimit, built, "en")).toContain("Choose a device with an RCD");
    expect(wordUndetermined(noLimit, built, "pl")).toContain("Wybierz aparat z RCD");
  });

  it("never blames the learner for a contact the board cannot read", () => {
    const item = {
      rule: "short",
      place: { kind: "contact", id: "socket-1.a.L" },
      field: "contact",
      cause: "board",
    } as const;
    expect(wordUndetermined(item, wiring, "en")).toContain(
      "line (L) at entry a of socket outlet 1. That is no mistake of yours.",
    );
  });

  it.each(languages)("has a word for every field the cases lack in %s", (language) => {
    expect(undetermined.length).toBeGreaterThan(0);
    for (const { wiring: built, item } of undetermined) {
      const text = wordUndetermined(item, built, language);
      expect(text).not.toMatch(/[{}~]|undefined|a value|jedna z wartości/);
    }
  });
});
