import { describe } from "vitest";
import { ringDevice } from "../../../shared/rules/ring-device.ts";
import { ring, table } from "./table.ts";

const device = (deviceRatingA: number) => ({ settings: { "way-1": { deviceRatingA } } });

// BS 7671 433.1.204: accessories to BS 1363 on a ring behind a 30 A or 32 A device.
describe("the device of a ring", () => {
  table(ringDevice, [
    { title: "may be 32 A", lines: ring, extras: device(32), gives: [] },
    { title: "may be 30 A", lines: ring, extras: device(30), gives: [] },
    { title: "is too large at 40 A", lines: ring, extras: device(40), gives: ["fix over way-1"] },
    { title: "is smaller than usual at 20 A", lines: ring, extras: device(20), gives: ["note under way-1"] },
    {
      title: "is judged on a ring of connection units too",
      lines: ["way-1.a fcu-1.a", "fcu-1.b fcu-2.a", "fcu-2.b way-1.b"],
      extras: device(40),
      gives: ["fix over way-1"],
    },
    {
      title: "of a radial is no matter of this rule",
      lines: ring.slice(0, 3),
      extras: device(40),
      gives: [],
    },
    {
      title: "of a loop of lights is no matter of this rule",
      lines: ["way-1.a lamp-1.a 1", "lamp-1.b lamp-2.a 1", "lamp-2.b way-1.b 1"],
      extras: device(6),
      gives: [],
    },
    {
      title: "must be known",
      lines: ring,
      extras: { settings: { "way-1": { deviceRatingA: undefined } } },
      gives: ["missing deviceRatingA way-1"],
    },
  ]);
});
