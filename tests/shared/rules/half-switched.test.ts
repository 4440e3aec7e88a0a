import { describe } from "vitest";
import { halfSwitched } from "../../../shared/rules/half-switched.ts";
import { conductorTable } from "./conductor-table.ts";

const [twoWay, intermediate] = [{ switching: "two-way" }, { switching: "intermediate" }] as const;
const extras = { settings: { "switch-1": twoWay, "switch-2": twoWay, "switch-3": intermediate } };
/** The switch drop of a rose on the strappers of switch 1: common practice, no source. */
const drop = ["way-1.a rose-1.a", "rose-1.s switch-1.s"];
/** Line at switch 1, the lamp at switch 2, and its neutral past both: common practice, no source. */
const feed = ["way-1.a switch-1.a", "switch-2.t lamp-1.a common:L E:E", "switch-1.b lamp-1.b N:N"];

describe("a lamp between two-way switches", () => {
  conductorTable(halfSwitched, [
    {
      title: "goes on and off from each where strappers and commons are joined",
      lines: [...drop, "switch-1.u switch-2.u"],
      extras,
      gives: [],
    },
    {
      title: "goes on and off from each where the strappers change places",
      lines: [...drop, "switch-1.u switch-2.u common:common strap1:strap2 strap2:strap1 E:E"],
      extras,
      gives: [],
    },
    {
      title: "goes on and off from each with line at one and the lamp at the other",
      lines: [...feed, "switch-1.u switch-2.u -common"],
      extras,
      gives: [],
    },
    {
      title: "goes on and off from each of three with an intermediate switch between",
      lines: [...drop, "switch-1.u switch-3.v", "switch-3.w switch-2.u"],
      extras,
      gives: [],
    },
    {
      title: "waits for the other switch where a strapper is missing",
      lines: [...drop, "switch-1.u switch-2.u -strap1"],
      extras,
      gives: ["fix half switch-1.u.strap1~switch-2.u.strap1"],
    },
    {
      title: "waits for the other switch where a strapper is missing between line and lamp",
      lines: [...feed, "switch-1.u switch-2.u -common -strap2"],
      extras,
      gives: ["fix half switch-1.u.strap2~switch-2.u.strap2"],
    },
    {
      title: "waits for the other switch where a common lands on a strapper",
      lines: [...drop, "switch-1.u switch-2.u common:strap1 strap1:common strap2:strap2 E:E"],
      extras,
      gives: ["fix half switch-1.u.common~switch-2.u.strap1"],
    },
    {
      title: "waits for the others where a strapper ends before the intermediate switch",
      lines: [...drop, "switch-1.u switch-3.v", "switch-3.w switch-2.u -strap1"],
      extras,
      gives: ["fix half switch-2.u.strap1~switch-3.w.strap1"],
    },
    {
      title: "goes on and off from each though the strappers of the drop change places",
      lines: [drop[0]!, "rose-1.s switch-1.s L:strap2 SL:strap1 E:E", "switch-1.u switch-2.u"],
      extras,
      gives: [],
    },
    {
      title: "is right behind a one-way switch that turns all of it off",
      lines: [
        "way-1.a switch-4.a",
        "switch-4.t switch-1.a SL:common E:E",
        "switch-4.b lamp-1.b N:N",
        "switch-1.u switch-2.u -common",
        "switch-2.t lamp-1.a common:L E:E",
      ],
      extras,
      gives: [],
    },
    {
      title: "is right at one two-way switch alone, which then switches one way",
      lines: ["way-1.a switch-1.a", "switch-1.u lamp-1.a strap1:L E:E", "switch-1.b lamp-1.b N:N"],
      extras,
      gives: [],
    },
    {
      title: "cannot be told of switches that nobody has said how they switch",
      lines: [...drop, "switch-1.u switch-2.u"],
      gives: ["missing switching switch-1", "missing switching switch-2"],
    },
    {
      title: "that lights in no position is something else",
      lines: [...drop, "switch-1.u switch-2.u -common"],
      extras,
      gives: [],
    },
    {
      title: "that has no neutral is something else",
      lines: [...feed.slice(0, 2), "switch-1.u switch-2.u -common -strap2"],
      extras,
      gives: [],
    },
  ]);
});
