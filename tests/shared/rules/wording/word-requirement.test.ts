import { describe, expect, it } from "vitest";
import { cableId, entryId, stationId } from "../../../../shared/board/ids.ts";
import { languages } from "../../../../shared/text/languages.ts";
import { wordRequirement } from "../../../../shared/rules/wording/word-requirement.ts";
import { wordUndetermined } from "../../../../shared/rules/wording/word-undetermined.ts";
import type { Requirement } from "../../../../shared/wiring/wiring.schema.ts";
import { ring } from "../table.ts";
import { wire } from "../wire.ts";
import { undetermined } from "./fixture-findings.ts";

const wiring = wire(ring);
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

describe("what cannot be told", () => {
  it("names the value and its place", () => {
    const item = {
      rule: "ring-cable",
      place: { kind: "cable", id: "socket-1.a~way-1.a" },
      field: "csaMm2",
      cause: "value",
    } as const;
    expect(wordUndetermined(item, wiring, "en")).toBe(
      "Cannot say yet: Ring cable too weak. Nobody has said the size of the cable from socket outlet 1 to way 1. Tell the bench, then look again.",
    );
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
