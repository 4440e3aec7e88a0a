import { describe, expect, it } from "vitest";
import { stationId } from "../../../../shared/board/ids.ts";
import { languages } from "../../../../shared/text/languages.ts";
import { judge } from "../../../../shared/rules/judge.ts";
import type { Finding } from "../../../../shared/rules/verdict.ts";
import { WordingGapError } from "../../../../shared/rules/wording/fill-template.ts";
import { wordFinding } from "../../../../shared/rules/wording/word-finding.ts";
import { ring } from "../table.ts";
import { wire } from "../wire.ts";
import { findings } from "./fixture-findings.ts";

const wiring = wire([...ring, "socket-1.c socket-4.a method-101"]);
const [overload] = judge(wiring).findings as [Finding];

describe("a finding in words", () => {
  it("says where, what, why in numbers, how to put it right, and what it rests on", () => {
    expect(wordFinding(overload, wiring, "en")).toEqual({
      title: "Undersized spur cable",
      where: "Look at the cable from socket outlet 1 to socket outlet 4.",
      what: "The cable from socket outlet 1 to socket outlet 4 is a spur. It is 2.5 mm². The way it is run, it may carry 17 A.",
      why: "Socket outlet 4 can take 20 A at worst. The 32 A device does not trip at that, so the cable would overheat.",
      remedy:
        "Use a larger cable. If its run keeps the heat in, move it. For up to 13 A you can put a fused connection unit (FCU) before it.",
      reference: "Regulation: BS 7671:2018, 433.1.1.",
      weightWord: "Put right",
    });
  });

  it("calls a station by the name the scenario gives it", () => {
    const names = new Map([[stationId("socket-4"), "Armchair"]]);
    expect(wordFinding(overload, wiring, "en", names).why).toMatch(
      /^Socket outlet 4 \(Armchair\) can take 20 A/,
    );
  });

  it("says what a rule rests on in Polish, all but the names of documents", () => {
    const wordsOf = (text: string) =>
      text.replace(/BS \d[\d-]*|On-Site Guide|IET Guidance Note/g, "").match(/\p{L}{2,}/gu) ?? [];
    const both = findings.map(({ finding, wiring }) =>
      (["en", "pl"] as const).map((language) => wordsOf(wordFinding(finding, wiring, language).reference)),
    );
    const english = new Set(both.flatMap(([en = []]) => en));
    expect(english.size).toBeGreaterThan(30);
    expect(both.flatMap(([, pl = []]) => pl.filter((word) => english.has(word)))).toEqual([]);
  });

  it("calls no switch a light that stays on", () => {
    const stays = findings.filter(({ finding }) => finding.rule === "always-on");
    expect(stays.length).toBeGreaterThan(0);
    for (const { finding, wiring } of stays) {
      expect(wordFinding(finding, wiring, "en").what).not.toMatch(/light at .*switch \d/);
      expect(wordFinding(finding, wiring, "pl").what).not.toMatch(/pali: .*łącznik/);
    }
  });

  it("names the ends of a lead in the case that Polish asks for", () => {
    const place = { kind: "cable" as const, id: "socket-4.b~socket-4.c" };
    expect(wordFinding({ ...overload, places: [place] }, wiring, "pl").where).toBe(
      "Zobacz: przewód między wejściem b zasilającym w gnieździe 4 a wejściem c zasilającym w gnieździe 4.",
    );
  });

  it("writes numbers with the mark of the language", () => {
    expect(wordFinding(overload, wiring, "pl").what).toContain("2,5 mm²");
  });

  it("calls a station without label and number by its kind", () => {
    const place = { kind: "station" as const, id: "heater-by-the-door" };
    const named = wordFinding(
      { ...overload, places: [place], causes: [place] },
      {
        stations: [
          { id: stationId(place.id), kind: "appliance", settings: { appliance: "water-heater" } },
          ...wiring.stations,
        ],
      },
      "en",
    );
    expect(named.where).toBe("Look at the water heater.");
  });

  it("tells a test face from a terminal, and the ends of a lead within one station by their entries", () => {
    const where = (id: string) =>
      wordFinding({ ...overload, places: [{ kind: "contact", id }] }, wiring, "en").where;
    expect(where("socket-4.front.L")).toBe("Look at line (L) on the front of socket outlet 4.");
    expect(where("socket-4.a.N")).toBe("Look at neutral (N) at entry a of socket outlet 4.");
    expect(where("socket-4.b~socket-4.c")).toBe(
      "Look at the lead from feed entry b of socket outlet 4 to feed entry c of socket outlet 4.",
    );
  });

  it("sends to each place once: a cable says its ends, a station its contacts", () => {
    const where = (...ids: string[]) =>
      wordFinding(
        {
          ...overload,
          places: ids.map((id) => ({ kind: id.includes("~") ? "cable" : "station", id })),
        },
        wiring,
        "en",
      ).where;
    expect(where("socket-1.c~socket-4.a", "socket-1", "socket-4", "socket-2")).toBe(
      "Look at the cable from socket outlet 1 to socket outlet 4; socket outlet 2.",
    );
    expect(where("socket-1", "socket-1.c~socket-4.a", "socket-1.b~socket-2.a")).toBe(
      "Look at socket outlet 1; the cable from socket outlet 1 to socket outlet 4; the cable from socket outlet 1 to socket outlet 2.",
    );
    expect(where("socket-4", "socket-4.a.N", "socket-1.c.L")).toBe(
      "Look at socket outlet 4 and line (L) at entry c of socket outlet 1.",
    );
  });

  it("names which core of a ring is open, and does not say of an open earth that a leg is overloaded by it", () => {
    const open = { rule: "ring-open", variant: "open" } as const;
    const words = wordFinding({ ...overload, ...open, facts: { cores: ["earth"] } }, wiring, "en");
    expect(words.what).toMatch(/^The ring does not close \(earth\): /);
    expect(words.why).toContain("With earth open, part of the ring has one earth only.");
    expect(wordFinding({ ...overload, ...open, facts: {} }, wiring, "en").what).toMatch(
      /^The ring does not close: /,
    );
  });

  it("joins the clauses it rests on in the language of the sentence", () => {
    const open = { ...overload, rule: "ring-open", variant: "open", facts: {} } as const;
    expect(wordFinding(open, wiring, "en").reference).toContain("433.1.204 and 643.2.1");
    expect(wordFinding(open, wiring, "pl").reference).toContain("433.1.204 i 643.2.1");
  });

  it.each([
    { placeCount: 4, says: "socket outlet 1, socket outlet 2, socket outlet 3 and socket outlet 4." },
    { placeCount: 9, says: "socket outlet 1, socket outlet 2, socket outlet 3 and 6 more." },
  ])(
    "names three places and counts the rest, where it is more than one: $placeCount",
    ({ placeCount, says }) => {
      const places = Array.from({ length: placeCount }, (_, at) => ({
        kind: "station" as const,
        id: `socket-${at + 1}`,
      }));
      const stations = places.map(({ id }) => ({ id: stationId(id), kind: "socket-outlet" as const }));
      const finding = { ...overload, places };
      expect(wordFinding(finding, { stations }, "en").where).toBe(`Look at ${says}`);
      const inFull = wordFinding(finding, { stations }, "en", undefined, Infinity).where;
      expect(inFull.match(/socket outlet/g)).toHaveLength(placeCount);
    },
  );

  it("refuses a variant without wording, and a fact that is not there, rather than say half a sentence", () => {
    expect(() => wordFinding({ ...overload, variant: "unheard-of" }, wiring, "en")).toThrow(RangeError);
    expect(() => wordFinding({ ...overload, variant: "constructor" }, wiring, "en")).toThrow(RangeError);
    expect(() => wordFinding({ ...overload, facts: {} }, wiring, "en")).toThrow(WordingGapError);
  });

  it.each(languages)("of every case leaves no gap, no id and no bracket in %s", (language) => {
    expect(findings.length).toBeGreaterThan(80);
    const wrong = findings.flatMap(({ file, wiring: built, finding }) =>
      (Object.entries(wordFinding(finding, built, language)) as [string, string][])
        .filter(([, text]) => /[{}[\]~]|undefined|NaN|\w-\d+\.[a-z]|\s{2}/.test(text) || text.trim() === "")
        .map(([part, text]) => `${file} ${finding.id} ${part}: ${text}`),
    );
    expect(wrong).toEqual([]);
  });
});
