import { describe } from "vitest";
import { pointLoad } from "../../../shared/rules/point-load.ts";
import { load, table } from "./table.ts";

const radial = ["way-1.a socket-1.a"];
const at1 = (...watts: number[]) => ({ loads: watts.map((powerW) => load("socket-1", powerW)) });
const single = { settings: { "socket-1": { gangs: 1 as const } } };

// BS 1363-2, from memory: 13 A a single, 20 A a twin in total. 20 A x 230 V = 4600 W. A 3 kW appliance counts as 13 A.
describe("the load at one socket outlet", () => {
  table(pointLoad, [
    { title: "may be 4600 W at a twin", lines: radial, extras: at1(2300, 2300), gives: [] },
    {
      title: "is queried at 4700 W at a twin",
      lines: radial,
      extras: at1(2300, 2400),
      gives: ["query twin socket-1"],
    },
    {
      title: "is queried at two of 3 kW at a twin",
      lines: radial,
      extras: at1(3000, 3000),
      gives: ["query twin socket-1"],
    },
    {
      title: "may be one appliance of 3 kW at a single",
      lines: radial,
      extras: { ...at1(3000), ...single },
      gives: [],
    },
    {
      title: "is queried at 3 kW and 500 W at a single",
      lines: radial,
      extras: { ...at1(3000, 500), ...single },
      gives: ["query single socket-1"],
    },
    { title: "is no matter where none is stated", lines: radial, extras: single, gives: [] },
    {
      title: "is no matter at a socket outlet that is not wired",
      lines: ["way-1.a socket-2.a"],
      extras: { also: ["socket-1"], ...at1(9000) },
      gives: [],
    },
    {
      title: "cannot be told while nobody called it single or twin",
      lines: radial,
      extras: { ...at1(4000), settings: { "socket-1": { gangs: undefined } } },
      gives: ["missing gangs socket-1"],
    },
    {
      title: "is right at 13 A whether single or twin",
      lines: radial,
      extras: { ...at1(2900), settings: { "socket-1": { gangs: undefined } } },
      gives: [],
    },
  ]);
});
