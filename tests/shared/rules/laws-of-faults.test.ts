import { describe, expect, it } from "vitest";
import { cableId, entryId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { RuleId } from "../../../shared/rules/rule.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import type { Load } from "../../../shared/wiring/wiring.schema.ts";
import { crossings } from "./change-cable.ts";
import { asWiring, type Circuit, randomCircuit } from "./random-circuit.ts";
import { breaks, pick } from "./try-law.ts";

/** Where a cable more can go in: an entry of a point or box on the unfused side. */
function openEntry(random: () => number, { stations, cables }: Circuit): string {
  const points = stations.filter(({ kind }) => kind === "socket-outlet" || kind === "ceiling-rose");
  const { id, kind } = pick(random, points);
  const used = new Set(cables.flatMap(({ from, to }) => [from, to]));
  const letters = kind === "ceiling-rose" ? "abc" : "abcdef";
  const letter = [...letters].find((each) => !used.has(entryId(id, each)))!;
  return `${id}.${letter}`;
}

describe("two circuits joined by a cable", () => {
  it("are told to be two ways' circuits, and nothing else", () => {
    expect(
      breaks((random) => {
        const kinds = ["ring", "radial-20", "radial-32", "lighting"] as const;
        const [one, other] = [randomCircuit(random, "a-", kinds), randomCircuit(random, "b-", kinds)];
        const ends = [openEntry(random, one), openEntry(random, other)].map((entry) => {
          const [station = "", letter = ""] = entry.split(".");
          return entryId(station, letter);
        });
        // Off the ring or the spine: behind a fused unit both circuits' lines meet through the fuse as well.
        const joint = { from: ends[0]!, to: ends[1]!, csaMm2: 2.5, lengthM: 3 };
        const wiring = asWiring(one, other);
        const verdict = judge({ ...wiring, cables: [...wiring.cables, joint] });
        const rules = [...new Set(verdict.findings.map(({ rule }) => rule))];
        const lacking = verdict.undetermined.map(({ rule, field }) => `${rule} lacks ${field}`);
        const others = [...rules.filter((rule) => rule !== "two-ways"), ...lacking];
        return rules.includes("two-ways") && others.length === 0
          ? []
          : [`${cableId(joint.from, joint.to)} gives ${rules.join(", ")} ${lacking.join(", ")}`];
      }),
    ).toEqual([]);
  });
});

/** The same circuit with its cables many times as long, so that drops come near their limits or beyond. */
const longer = (random: () => number, circuit: Circuit): Circuit => ({
  ...circuit,
  cables: circuit.cables.map((cable) => ({
    ...cable,
    lengthM: Math.min(1000, (cable.lengthM ?? 1) * (1 + Math.floor(14 * random()))),
  })),
});

/** Points of a verdict that are told to lose too much. */
const dropPlaces = (verdict: Verdict): string[] =>
  verdict.findings
    .filter(({ rule }) => rule === "volt-drop")
    .flatMap(({ causes, places }) => [...causes, ...places].map(({ id }) => id));

describe("a stated load", () => {
  it("takes no finding of too much drop away", () => {
    expect(
      breaks((random) => {
        const circuit = longer(random, randomCircuit(random, "a-", ["ring", "radial-20", "radial-32"]));
        const at = pick(
          random,
          circuit.stations.filter(({ kind }) => kind === "socket-outlet"),
        );
        const load: Load = { station: at.id, powerW: pick(random, [20, 150, 1000, 2300]) };
        const [bare, loaded] = [circuit, { ...circuit, loads: [...circuit.loads, load] }].map((each) =>
          dropPlaces(judge(asWiring(each))),
        );
        return bare!
          .filter((id) => !loaded!.includes(id))
          .map((id) => `${id} loses less with ${load.powerW} W`);
      }),
    ).toEqual([]);
  });
});

/** What rests on a current, and says nothing while a conductor of the circuit is crossed. */
const currentRules: readonly RuleId[] = ["ring-share", "volt-drop", "fault-loop", "cpc-size"];

describe("one core of one cable crossed", () => {
  it("leaves no finding that rests on a current", () => {
    expect(
      breaks((random) => {
        const circuit = longer(random, randomCircuit(random, "a-"));
        const at = Math.floor(random() * circuit.cables.length);
        const crossed = pick(random, crossings(circuit.cables[at]!, circuit.stations));
        const cables = circuit.cables.map((each, index) => (index === at ? crossed : each));
        const { findings } = judge(asWiring({ ...circuit, cables }));
        return findings.filter(({ rule }) => currentRules.includes(rule)).map(({ id }) => id);
      }),
    ).toEqual([]);
  });
});
