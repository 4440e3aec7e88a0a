import type { SlotView } from "../../shared/protocol/test-view.ts";
import type { MeterKey } from "../text/meter-texts.ts";
import type { Words } from "../text/words.svelte.ts";
import { fixed } from "./shown-text.ts";

type Speaker = Pick<Words<MeterKey>, "t">;
type Expected = NonNullable<SlotView["expected"]>;
type Term = Extract<Expected, { by: "sum" | "quarter" }>["ring"][number];

/** What a reading should come to, a line each: the value, then its working. */
export function expectedLines(expected: SlotView["expected"], words: Speaker): string[] {
  if (!expected) return [words.t("expected.unknown")];
  const n = (value: number, decimals = 2): string => fixed(value, decimals, words);
  switch (expected.by) {
    case "limit":
      return [words.t("expected.limit", { least: n(expected.leastMegohm), testV: expected.testV })];
    case "zs": {
      const { coldLimitOhm, limitOhm, factor } = expected;
      return [words.t("expected.zs", { cold: n(coldLimitOhm), limit: n(limitOhm), factor })];
    }
    case "touch":
      return [words.t("expected.touch", { most: expected.mostOhm, rcd: expected.rcdMa })];
    case "fault-current":
      return [words.t("expected.fault-current", { most: expected.mostA })];
    case "rcd":
      return [
        expected.mostMs === undefined
          ? words.t("expected.rcd-holds")
          : words.t("expected.rcd", { most: expected.mostMs }),
      ];
    case "paths":
      return [words.t("expected.is", { n: n(expected.expectedOhm) }), words.t("expected.paths")];
    default: {
      const term = ({ of, lengthM, resistanceMilliohmPerM, resistanceOhm }: Term): string =>
        words.t("expected.term", {
          of,
          length: n(lengthM, 1),
          each: n(resistanceMilliohmPerM),
          ohm: n(resistanceOhm),
        });
      const sum = expected.ring.map(({ resistanceOhm }) => n(resistanceOhm)).join(" + ");
      return [
        words.t("expected.is", { n: n(expected.expectedOhm) }),
        ...expected.ring.map(term),
        ...(expected.by === "quarter" ? [words.t("expected.quarter", { sum })] : []),
        ...expected.spur.map(term),
      ];
    }
  }
}
