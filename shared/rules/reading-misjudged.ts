import type { CircuitModel } from "../circuit/model.ts";
import { cableGaps } from "../electrical/circuit-gaps.ts";
import { checkReading } from "../electrical/check-reading.ts";
import type { Reading } from "../wiring/wiring.schema.ts";
import { at, evidence, missing } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * A reading on record that its limits pass and the learner failed, or the other way round, or that was passed though no
 * cable of that length reads so; or one that was not taken as its test is, or not written down as the meter showed it.
 */
export const readingMisjudged: Rule = {
  id: "reading-misjudged",
  variants: {
    passed: "fix",
    failed: "fix",
    implausible: "fix",
    misread: "fix",
    "wrong-points": "fix",
    "wrong-setting": "fix",
  },
  source: {
    kind: "guidance",
    document: "IET Guidance Note 3",
    clause: "limits of the dead tests (BS 7671 643.2 and 643.3)",
    checked: "secondary copy",
  },
  isNeverHidden: true,
  check: (model) => {
    const readings = model.wiring.readings ?? [];
    return readings.flatMap((reading): (Evidence | Missing)[] => {
      const { test, way, red, judged, resistanceOhm, insulationMegohm } = reading;
      if (judged === undefined) return [];
      const check = checkReading(model, reading, readings);
      if (check === "right") return [];
      if (check === "unclear") return lackingFor(model, reading);
      const facts = {
        test,
        way,
        ...(resistanceOhm === undefined ? {} : { readingOhm: resistanceOhm }),
        ...(insulationMegohm === undefined ? {} : { readingMegohm: insulationMegohm }),
        ...shownFacts(reading),
      };
      const place = red ? at("contact", red) : at("station", way);
      return evidence(check, [place], facts);
    });
  },
};

/** What the meter showed, where that is not what was written down. */
function shownFacts({ shown }: Reading): Record<string, number> {
  const { resistanceOhm, insulationMegohm } = shown ?? {};
  return {
    ...(resistanceOhm === undefined ? {} : { shownOhm: resistanceOhm }),
    ...(insulationMegohm === undefined ? {} : { shownMegohm: insulationMegohm }),
  };
}

/** What the record lacks to be compared: the reading, where it was taken, or what its cables are. */
function lackingFor(model: CircuitModel, reading: Reading): Missing[] {
  const { test, way, red, black, resistanceOhm } = reading;
  const place = at("station", way);
  if (test === "polarity") return [missing(place, "isPolarityRight")];
  if (test === "insulation") return [missing(place, "insulationMegohm")];
  if (resistanceOhm === undefined) return [missing(place, "resistanceOhm")];
  if (red === undefined) return [missing(place, "red")];
  if (test !== "continuity-cpc") return [];
  if (black === undefined) return [missing(place, "black")];
  const circuit = model.circuits.find((one) => one.way === way);
  return gapsToMissing(cableGaps(circuit ? [circuit.zone, ...circuit.fusedZones] : []));
}
