import { describe } from "vitest";
import { switchedNeutral } from "../../../shared/rules/switched-neutral.ts";
import { conductorTable } from "./conductor-table.ts";

describe("a switch", () => {
  conductorTable(switchedNeutral, [
    {
      title: "in the line is right",
      lines: ["way-1.a box-1.a", "box-1.s switch-1.s", "box-1.t lamp-1.a"],
      gives: [],
    },
    {
      title: "in the neutral leaves the lamp live",
      lines: [
        "way-1.a box-1.a",
        "box-1.b lamp-1.a L:L E:E",
        "box-1.c switch-1.s N:L E:E",
        "switch-1.t lamp-1.b SL:N E:E",
      ],
      gives: ["danger neutral box-1.c.N~switch-1.s.L"],
    },
    {
      title: "with both neutrals on one terminal breaks nothing",
      lines: [
        "way-1.a box-1.a",
        "box-1.b lamp-1.a L:L E:E",
        "box-1.c switch-1.s N:L E:E",
        "switch-1.a lamp-1.b L:N E:E",
      ],
      gives: [],
    },
    {
      title: "with line at its other terminal is a short in waiting, not this",
      lines: ["way-1.a box-1.a", "box-1.c switch-1.s N:L L:SL", "switch-1.a lamp-1.b L:N E:E"],
      gives: [],
    },
    {
      title: "that a neutral only ends at is crossed, not this",
      lines: ["way-1.a box-1.a", "box-1.c switch-1.s N:L E:E"],
      gives: [],
    },
  ]);
});
