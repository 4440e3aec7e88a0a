import { describe, expect, it } from "vitest";
import { cableId, entryId, stationId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { RuleId } from "../../../shared/rules/rule.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import type { CableSpec, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { isTwoSided } from "../../../shared/board/station-kinds.ts";
import { entriesOf } from "../../../shared/wiring/buses.ts";
import { crossings, withConductors } from "./change-cable.ts";
import { asWiring, type Circuit, randomCircuit } from "./random-circuit.ts";
import { breaks, pick, wiringsALaw } from "./try-law.ts";

const findingIds = ({ findings }: Verdict): string[] => findings.map(({ id }) => id).sort();
const lackingIds = ({ undetermined }: Verdict): string[] =>
  undetermined.map(({ rule, place, field }) => `${rule} lacks ${field} of ${place.id}`).sort();
const said = (verdict: Verdict): string[] => [...findingIds(verdict), ...lackingIds(verdict)];
const differences = (a: readonly string[], b: readonly string[]): string[] => [
  ...a.filter((id) => !b.includes(id)).map((id) => `gone: ${id}`),
  ...b.filter((id) => !a.includes(id)).map((id) => `new: ${id}`),
];
/** A circuit with something wrong: a core out or crossed, a cable too thin, one out, or a device too large. */
function spoilt(random: () => number, circuit: Circuit): Circuit {
  const at = Math.floor(random() * circuit.cables.length);
  const cable = circuit.cables[at];
  if (!cable) return circuit;
  const how = random();
  if (how < 0.2) return { ...circuit, cables: circuit.cables.filter((_, index) => index !== at) };
  if (how < 0.3)
    return {
      ...circuit,
      stations: circuit.stations.map((station) =>
        station.kind === "way"
          ? { ...station, settings: { ...station.settings, deviceRatingA: 40 } }
          : station,
      ),
    };
  if (how < 0.4) return withOneMore(random, circuit);
  if (how < 0.45) return reversedUnits(circuit);
  const wrong =
    how < 0.6 ? { ...cable, csaMm2: 1 } : (pick(random, crossings(cable, circuit.stations)) ?? cable);
  return { ...circuit, cables: circuit.cables.map((each, index) => (index === at ? wrong : each)) };
}

/** A cable more, between any two free feed entries: across a ring, to and fro, or from one spur to the next. */
function withOneMore(random: () => number, circuit: Circuit): Circuit {
  const taken = new Set(circuit.cables.flatMap(({ from, to }) => [from, to]));
  const free = circuit.stations.flatMap((station) =>
    entriesOf(station)
      .filter(({ side }) => side === "feed")
      .map(({ letter }) => entryId(station.id, letter))
      .filter((entry) => !taken.has(entry)),
  );
  const [from, to] = [pick(random, free), pick(random, free)];
  if (!from || !to || from === to) return circuit;
  return { ...circuit, cables: [...circuit.cables, { from, to, csaMm2: 2.5, lengthM: 3 }] };
}

/** The connection units and isolators of a circuit fed from their load side. */
function reversedUnits(circuit: Circuit): Circuit {
  const units = new Set<string>(circuit.stations.filter(({ kind }) => isTwoSided(kind)).map(({ id }) => id));
  return { ...circuit, cables: circuit.cables.map((cable) => turnedAt(cable, units)) };
}

describe("a circuit by the book", () => {
  it("has nothing to mend and nothing unsaid", () => {
    expect(breaks((random) => said(judge(asWiring(randomCircuit(random, "a-")))))).toEqual([]);
  });
});

describe("a circuit beside another", () => {
  it("adds nothing and takes nothing away where it is right, however wrong the other is", () => {
    expect(
      breaks((random) => {
        const [one, other] = [spoilt(random, randomCircuit(random, "a-")), randomCircuit(random, "b-")];
        return differences(said(judge(asWiring(one))), said(judge(asWiring(one, other))));
      }),
    ).toEqual([]);
  });
});

/** Rules that a cable of the largest size, run on the surface, satisfies. */
const sizeRules: readonly RuleId[] = [
  "ring-cable",
  "spur-cable",
  "radial-cable",
  "device-cable",
  "fused-cable",
  "least-size",
];
/** Rules whose cause is a core that has no business where it is. */
const coreRules: readonly RuleId[] = ["short", "neutral-earth", "polarity", "borrowed-neutral"];

/** Rules that a circuit of very short cables satisfies, whatever its sizes. */
const lengthRules: readonly RuleId[] = ["volt-drop"];

/** Rules whose cause is a core that is not there: every core of its cable straight is what mends it. */
const missingRules: readonly RuleId[] = ["cpc-missing", "conductor-missing", "unswitched"];

/** Rules whose cause is a cable that ought not to be there. */
const extraRules: readonly RuleId[] = [
  ...(["spur-on-spur", "spur-one-point", "ring-bridged", "ring-loop", "dead-end-lead"] as const),
];

const isNamed = ({ from, to }: CableSpec, named: ReadonlySet<string>): boolean =>
  [...named].some((id) => id === cableId(from, to) || (id.includes("~") && isCoreOf(id, from, to)));

const isCoreOf = (core: string, from: string, to: string): boolean => {
  const ends = core.split("~").map((contact) => contact.slice(0, contact.lastIndexOf(".")));
  return ends.includes(from) && ends.includes(to);
};

const straight = ({ conductors: _conductors, ...cable }: CableSpec): CableSpec => cable;

const otherSide: Readonly<Record<string, string>> = { a: "c", b: "d", c: "a", d: "b" };

/** The cable with its end at a named two-sided station moved to the other side. */
function turnedAt(cable: CableSpec, named: ReadonlySet<string>): CableSpec {
  const moved = (entry: CableSpec["from"]): CableSpec["from"] => {
    const [station = "", letter = ""] = entry.split(".");
    return named.has(station) ? entryId(stationId(station), otherSide[letter] ?? letter) : entry;
  };
  return { ...cable, from: moved(cable.from), to: moved(cable.to) };
}

/** The wiring with what a finding names mended, or undefined where this law has no hand for it. */
function mended(wiring: Wiring, { rule, causes }: Verdict["findings"][number]): Wiring | undefined {
  const named = new Set(causes.map(({ id }) => id));
  if (sizeRules.includes(rule))
    return {
      ...wiring,
      cables: wiring.cables.map((cable) =>
        named.has(cableId(cable.from, cable.to))
          ? { ...cable, csaMm2: 16, cpcCsaMm2: 16, method: "C" }
          : cable,
      ),
    };
  if (coreRules.includes(rule) && causes.every(({ kind }) => kind === "conductor"))
    return {
      ...wiring,
      cables: wiring.cables.map((cable) =>
        withConductors(cable, wiring.stations, (core) => !named.has(core.id)),
      ),
    };
  if (rule === "rcd" || rule === "ring-device" || rule === "lighting-device")
    return {
      ...wiring,
      stations: wiring.stations.map((station) =>
        station.kind === "way"
          ? {
              ...station,
              settings: { ...station.settings, rcdMa: 30, deviceRatingA: rule === "ring-device" ? 32 : 6 },
            }
          : station,
      ),
    };
  if (missingRules.includes(rule)) {
    const own = wiring.cables.filter((cable) => isNamed(cable, named));
    return own.length === 0
      ? undefined
      : {
          ...wiring,
          cables: wiring.cables.map((cable) => (own.includes(cable) ? straight(cable) : cable)),
        };
  }
  if (extraRules.includes(rule) && causes.some(({ kind }) => kind === "cable"))
    return {
      ...wiring,
      cables: wiring.cables.filter((cable) => !named.has(cableId(cable.from, cable.to))),
    };
  if (rule === "fuse-size")
    return {
      ...wiring,
      stations: wiring.stations.map((station) =>
        named.has(station.id) ? { ...station, settings: { ...station.settings, fuseRatingA: 3 } } : station,
      ),
    };
  if (rule === "wrong-side")
    return { ...wiring, cables: wiring.cables.map((cable) => turnedAt(cable, named)) };
  if (lengthRules.includes(rule))
    return {
      ...wiring,
      cables: wiring.cables.map((cable) => ({ ...cable, lengthM: Math.min(1, cable.lengthM ?? 1) })),
    };
  return undefined;
}

describe("what a finding names", () => {
  it("once mended leaves that finding no more", () => {
    let mendedCount = 0;
    expect(
      breaks((random) => {
        const wiring = asWiring(spoilt(random, spoilt(random, randomCircuit(random, "a-"))));
        return judge(wiring).findings.flatMap((finding) => {
          const better = mended(wiring, finding);
          if (!better) return [];
          mendedCount++;
          return findingIds(judge(better)).filter((id) => id === finding.id);
        });
      }),
    ).toEqual([]);
    expect(mendedCount).toBeGreaterThan(wiringsALaw / 4);
  });
});
