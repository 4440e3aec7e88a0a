import { describe, expect, it } from "vitest";
import { languages } from "../../../../shared/text/languages.ts";
import { judge } from "../../../../shared/rules/judge.ts";
import { groupFindings } from "../../../../shared/rules/wording/group-findings.ts";
import { placesOf, wordFinding } from "../../../../shared/rules/wording/word-finding.ts";
import { wire } from "../wire.ts";
import { findings as caseFindings, judged } from "./fixture-findings.ts";

const row = (way: string, first: number, size = "2.5") => [
  `${way}.a socket-${first}.a ${size} 2m`,
  `socket-${first}.b socket-${first + 1}.a ${size} 2m`,
  `socket-${first + 1}.b socket-${first + 2}.a ${size} 2m`,
  `socket-${first + 2}.b socket-${first + 3}.a ${size} 2m`,
  `socket-${first + 3}.b socket-${first + 4}.a ${size} 2m`,
];
const shown = (lines: string[]) => {
  const wiring = wire(lines);
  const verdict = judge(wiring);
  return { wiring, verdict, groups: groupFindings(verdict) };
};

describe("one cause", () => {
  it("is one note with its places: five cables of a radial that the device does not protect", () => {
    const { wiring, verdict, groups } = shown(row("way-1", 1));
    // Nothing is lost of the verdict itself: it keeps a finding a cable, with its own numbers.
    expect(verdict.findings.map(({ rule }) => rule)).toEqual(Array<string>(5).fill("radial-cable"));
    expect(groups).toHaveLength(1);
    const [group] = groups;
    expect(group && placesOf(group).map(({ id }) => id)).toEqual(
      verdict.findings.map(({ causes: [cause] }) => cause?.id),
    );
    const words = group && wordFinding(group, wiring, "en");
    expect(words?.title).toBe("The device does not protect these cables");
    expect(words?.what).toMatch(
      /^These cables are 2\.5 mm²: the cable from .*; .*\. The way .* carry 27 A\.$/,
    );
    // Five would fill the note: three are named, and all where they are asked for.
    expect(words?.where).toMatch(
      /^(Look at )?the cable from .*; the cable from .*; the cable from .*; 2 more\.$/i,
    );
    const inFull = group && wordFinding(group, wiring, "en", undefined, Infinity);
    expect(inFull?.where.match(/the cable from/g)).toHaveLength(5);
  });

  it("tells a number that differs from cable to cable as a range", () => {
    const lines = [
      ...row("way-1", 1).slice(0, 4),
      "socket-4.b socket-5.a 1.5 2m",
      "socket-5.b socket-6.a 1.5 2m",
    ];
    const { wiring, groups } = shown(lines);
    const [group] = groups;
    expect(group && wordFinding(group, wiring, "en").what).toContain("These cables are 1.5 mm² to 2.5 mm²: ");
    expect(group && wordFinding(group, wiring, "pl").what).toContain("od 1,5 mm² do 2,5 mm²");
  });

  it("of two circuits is two notes, for each is put right on its own", () => {
    expect(shown([...row("way-1", 1), ...row("way-2", 6)]).groups).toHaveLength(2);
  });

  it("of one cable is told as of one", () => {
    const { wiring, groups } = shown(["way-1.a socket-1.a", "socket-1.b socket-2.a 4"]);
    const [group] = groups;
    expect(groups).toHaveLength(1);
    expect(group && wordFinding(group, wiring, "en").what).toMatch(
      /^The cable from socket outlet 1 to way 1 is /,
    );
  });

  it("is never made of what asks for different things: two spurs off spurs stay two", () => {
    const { groups } = shown([
      "way-1.a socket-1.a",
      "socket-1.b socket-2.a",
      "socket-2.b way-1.b",
      "socket-1.c socket-3.a",
      "socket-3.b socket-4.a",
      "socket-2.c socket-5.a",
      "socket-5.b socket-6.a",
    ]);
    expect(groups.map(([{ rule }]) => rule)).toEqual(["spur-on-spur", "spur-on-spur"]);
  });
});

describe("the notes of every case", () => {
  it("hold every finding once, in the order of their first", () => {
    for (const { verdict } of judged) {
      const groups = groupFindings(verdict);
      expect(
        groups
          .flat()
          .map(({ id }) => id)
          .toSorted(),
      ).toEqual(verdict.findings.map(({ id }) => id).toSorted());
      const firsts = groups.map(([{ id }]) => verdict.findings.findIndex((one) => one.id === id));
      expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
    }
  });

  it.each(languages)(
    "are whole sentences in %s, and say neither memory nor that no rule is published",
    (language) => {
      const said = [
        ...judged.flatMap(({ verdict, wiring }) =>
          groupFindings(verdict).map((group) => wordFinding(group, wiring, language)),
        ),
        ...caseFindings.map(({ finding, wiring }) => wordFinding(finding, wiring, language)),
      ].flatMap((words) => Object.values<string>({ ...words }));
      expect(said.filter((text) => /[{}[\]]|undefined|\s{2}|^\s*$/.test(text))).toEqual([]);
      expect(said.filter((text) => /memory|published|pamięci|żaden przepis/i.test(text))).toEqual([]);
    },
  );
});
