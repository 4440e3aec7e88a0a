import { judgeReading } from "../electrical/judge-reading.ts";
import { at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A reading on record that its limits pass and the learner failed, or the other way round. */
export const readingMisjudged: Rule = {
  id: "reading-misjudged",
  variants: { passed: "fix", failed: "fix" },
  source: {
    kind: "guidance",
    document: "IET Guidance Note 3",
    clause: "limits of the dead tests (BS 7671 643.2 and 643.3)",
    checked: "secondary copy",
  },
  check: (model) => {
    const readings = model.wiring.readings ?? [];
    return readings.flatMap((reading) => {
      const { test, way, red, judged, resistanceOhm, insulationMegohm } = reading;
      const right = judgeReading(model, reading, readings);
      if (judged === undefined || right === "unclear" || judged === right) return [];
      const facts = {
        test,
        way,
        ...(resistanceOhm === undefined ? {} : { readingOhm: resistanceOhm }),
        ...(insulationMegohm === undefined ? {} : { readingMegohm: insulationMegohm }),
      };
      const place = red ? at("contact", red) : at("station", way);
      return evidence(judged === "pass" ? "passed" : "failed", [place], facts);
    });
  },
};
