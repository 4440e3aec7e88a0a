import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cableId, entryId, type EntryId, stationOf } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { RuleId } from "../../../shared/rules/rule.ts";
import type { Finding, Verdict } from "../../../shared/rules/verdict.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { supply } from "../../../shared/trade/supply.ts";
import { entriesOf } from "../../../shared/wiring/buses.ts";
import type { CableSpec, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { someOf } from "../../breadth.ts";
import { crossings, opened } from "../rules/change-cable.ts";

const answers = readdirSync("scenarios")
  .filter((name) => name.endsWith(".json"))
  .flatMap((name) => {
    const scenario = JSON.parse(readFileSync(`scenarios/${name}`, "utf8")) as Scenario;
    return scenario.modelAnswers.map((answer, index) => ({
      title: `${scenario.id}, answer ${index + 1}`,
      wiring: toWiring({ scenario, built: answer }),
    }));
  });

/** The cable once more beside itself, in free entries of the same sides; none where there are no such entries. */
function doubled(cable: CableSpec, { stations, cables }: Wiring): CableSpec[] {
  const used = new Set(cables.flatMap(({ from, to }) => [from, to]));
  const beside = (entry: EntryId): EntryId | undefined => {
    const station = stations.find(({ id }) => id === stationOf(entry));
    const entries = station ? entriesOf(station) : [];
    const side = entries.find(({ letter }) => entryId(station!.id, letter) === entry)?.side;
    return entries
      .filter((each) => each.side === side)
      .map(({ letter }) => entryId(station!.id, letter))
      .find((each) => !used.has(each));
  };
  const [from, to] = [beside(cable.from), beside(cable.to)];
  return from && to ? [{ ...cable, from, to }] : [];
}

/** Every way in which this sweep spoils one cable, with a word for each. */
const spoiltWays = (wiring: Wiring): { what: string; wiring: Wiring }[] =>
  wiring.cables.flatMap((cable, index) => {
    const inPlace = (word: string) => (each: CableSpec, at: number) => ({
      what: `${cableId(cable.from, cable.to)} ${word} ${at + 1}`,
      wiring: { ...wiring, cables: wiring.cables.map((one, place) => (place === index ? each : one)) },
    });
    return [
      ...crossings(cable, wiring.stations).map(inPlace("crossed")),
      ...opened(cable, wiring.stations).map(inPlace("opened")),
      ...doubled(cable, wiring).map((each) => ({
        what: `${cableId(cable.from, cable.to)} doubled`,
        wiring: { ...wiring, cables: [...wiring.cables, each] },
      })),
    ];
  });

/** Facts in amperes above what the supply gives into a dead short, its own impedance counted. */
function impossibleCurrents({ findings }: Verdict, wiring: Wiring): string[] {
  const mostA = supply.nominalV / (wiring.supply?.zeOhm ?? 0.35);
  return findings.flatMap(({ id, facts }) =>
    Object.entries(facts).flatMap(([key, value]) =>
      /[a-z]A$/.test(key) && typeof value === "number" && value > mostA ? [`${id}: ${key} ${value}`] : [],
    ),
  );
}

/** Two rules that may not both be said of one cable or station, since the one says that the other does not apply. */
const exclusive: readonly [RuleId, RuleId][] = [
  ["device-cable", "radial-cable"],
  ["device-cable", "ring-cable"],
  ["radial-cable", "ring-cable"],
  ["radial-cable", "spur-cable"],
  ["spur-heavy", "spur-cable"],
  ["spur-heavy", "spur-one-point"],
  ["isolation", "accessory-rating"],
  ["own-circuit", "heavy-on-ring"],
  ["own-circuit", "needs-fuse"],
  ["always-on", "unswitched"],
  ["ring-open", "two-rings"],
  ["ring-open", "ring-bridged"],
  ["ring-open", "ring-share"],
];

/** Findings that contradict one another, or that the verdict contradicts. */
function contradictions({ findings, suppressed, undetermined, proposal }: Verdict, wiring: Wiring): string[] {
  const about = ({ causes }: Finding): string => causes[0]?.id ?? "";
  const pairs = exclusive.flatMap(([a, b]) =>
    findings
      .filter(({ rule }) => rule === a)
      .flatMap((one) =>
        findings.some((other) => other.rule === b && about(other) === about(one))
          ? [`${a} and ${b} of ${about(one)}`]
          : [],
      ),
  );
  const conductors = findings
    .filter(({ causes }) => causes[0]?.kind === "conductor")
    .map((finding) => about(finding));
  const twice = conductors.filter((id, index) => conductors.indexOf(id) !== index);
  const shown = new Set(findings.map(({ id }) => id));
  const stated = undetermined.filter(({ place, field }) => {
    const station = wiring.stations.find(({ id }) => id === place.id);
    const cable = wiring.cables.find(({ from, to }) => cableId(from, to) === place.id);
    return [station?.settings, cable].some((holder) => holder && field in holder);
  });
  const heavy = findings.some(({ weight }) => weight === "danger" || weight === "fix");
  return [
    ...pairs,
    ...twice.map((id) => `two causes in one conductor ${id}`),
    ...suppressed.filter(({ id }) => shown.has(id)).map(({ id }) => `${id} both said and kept back`),
    ...stated.map(({ rule, place, field }) => `${rule} asks for ${field} of ${place.id}, which is stated`),
    ...(proposal === "met" && (heavy || undetermined.length > 0) ? ["met, with something to mend"] : []),
  ];
}

describe.each(someOf(answers, 3))(
  "the model answer of $title, each cable crossed, opened core by core and doubled",
  (answer) => {
    const spoilt = spoiltWays(answer.wiring).map(({ what, wiring }) => ({
      what,
      wiring,
      verdict: judge(wiring),
    }));
    const of = (check: (verdict: Verdict, wiring: Wiring) => string[]): string[] =>
      spoilt.flatMap(({ what, wiring, verdict }) => check(verdict, wiring).map((line) => `${what}: ${line}`));

    it("shows no current that the supply cannot give", () => {
      expect(spoilt.length).toBeGreaterThan(5);
      expect(of(impossibleCurrents)).toEqual([]);
    });

    it("gives no two findings that contradict one another", () => {
      expect(of(contradictions)).toEqual([]);
    });

    it("says something of every core that is crossed or out", () => {
      const silent = spoilt.filter(
        ({ what, verdict }) => !what.endsWith("doubled") && verdict.findings.length === 0,
      );
      expect(silent.map(({ what }) => what)).toEqual([]);
    });
  },
);
