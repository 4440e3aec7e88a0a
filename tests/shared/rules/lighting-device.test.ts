import { describe } from "vitest";
import { lightingDevice } from "../../../shared/rules/lighting-device.ts";
import { ring, table } from "./table.ts";

const device = (deviceRatingA: number | undefined) => ({ settings: { "way-1": { deviceRatingA } as never } });
const lights = ["way-1.a rose-1.a 1.5", "rose-1.b rose-2.a 1.5", "rose-2.s switch-2.s 1"];

// BS 7671 559.5.1.204: lampholders B15, B22, E14, E27 on 16 A at most. 524.1, Table 52.3: 1.0 mm² to lighting.
describe("a lighting circuit", () => {
  table(lightingDevice, [
    { title: "may be on 6 A", lines: lights, extras: device(6), gives: [] },
    { title: "may be on 16 A", lines: lights, extras: device(16), gives: [] },
    { title: "may not be on 20 A", lines: lights, extras: device(20), gives: ["fix over way-1"] },
    {
      title: "may not have a switch drop in 0.75 mm²",
      lines: [...lights.slice(0, 2), "rose-2.s switch-2.s 0.75"],
      extras: device(6),
      gives: ["fix small rose-2.s~switch-2.s"],
    },
    {
      title: "may have a connection unit for a fan in it",
      lines: [...lights, "rose-1.c fcu-1.a 1.5", "fcu-1.c fan-1.a 1"],
      extras: device(20),
      gives: ["fix over way-1"],
    },
    {
      title: "is not what lights on a ring are",
      lines: [...ring, "socket-1.c rose-1.a 1"],
      extras: device(32),
      gives: [],
    },
    {
      title: "is not what lights behind a fuse are",
      lines: [...ring, "socket-1.c fcu-1.a", "fcu-1.c rose-1.a 1"],
      extras: device(32),
      gives: [],
    },
    {
      title: "must be sized",
      lines: ["way-1.a rose-1.a ?"],
      extras: device(6),
      gives: ["missing csaMm2 rose-1.a~way-1.a"],
    },
    {
      title: "must have a known device",
      lines: lights,
      extras: device(undefined),
      gives: ["missing deviceRatingA way-1"],
    },
  ]);
});
