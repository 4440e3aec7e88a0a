import { describe, expect, it } from "vitest";
import { cableId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { RuleId } from "../../../shared/rules/rule.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";
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
  if (how < 0.4)
    return {
      ...circuit,
      stations: circuit.stations.map((station) =>
        station.kind === "way"
          ? { ...station, settings: { ...station.settings, deviceRatingA: 40 } }
          : station,
      ),
    };
  const wrong =
    how < 0.6 ? { ...cable, csaMm2: 1 } : (pick(random, crossings(cable, circuit.stations)) ?? cable);
  return { ...circuit, cables: circuit.cables.map((each, index) => (index === at ? wrong : each)) };
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
          ? { ...station, settings: { ...station.settings, rcdMa: 30, deviceRatingA: 6 } }
          : station,
      ),
    };
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
