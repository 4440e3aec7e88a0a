import { describe } from "vitest";
import { lightingLoad } from "../../../shared/rules/lighting-load.ts";
import { load, table } from "./table.ts";

const lamps = (count: number) =>
  Array.from({ length: count }, (_, at) => `${at === 0 ? "way-1.a" : `lamp-${at}.b`} lamp-${at + 1}.a 1.5`);
const device = (deviceRatingA: number | undefined) => ({ settings: { "way-1": { deviceRatingA } as never } });
const each = (count: number, powerW: number) => ({
  ...device(6),
  loads: Array.from({ length: count }, (_, at) => load(`lamp-${at + 1}`, powerW)),
});

// About a dozen points on 6 A: common practice, no source. 6 A x 230 V = 1380 W.
describe("lights on one 6 A device", () => {
  table(lightingLoad, [
    { title: "may be twelve", lines: lamps(12), extras: each(12, 10), gives: [] },
    {
      title: "are queried from thirteen of 10 W",
      lines: lamps(13),
      extras: each(13, 10),
      gives: ["query many way-1"],
    },
    {
      title: "are queried from thirteen of unstated watts, 100 W each",
      lines: lamps(13),
      extras: device(6),
      gives: ["query many way-1"],
    },
    {
      title: "are another rule's matter from fourteen of 100 W, which do not fit",
      lines: lamps(14),
      extras: each(14, 100),
      gives: [],
    },
    { title: "may be more on 10 A", lines: lamps(14), extras: device(10), gives: [] },
    {
      title: "count behind a connection unit too",
      lines: [
        ...lamps(8),
        "lamp-8.b fcu-1.a 1.5",
        "fcu-1.c lamp-9.a 1",
        ...[9, 10, 11, 12].map((at) => `lamp-${at}.b lamp-${at + 1}.a 1`),
      ],
      extras: each(13, 10),
      gives: ["query many way-1"],
    },
    {
      title: "are not counted on a circuit with socket outlets",
      lines: [...lamps(13), "lamp-13.b socket-1.a"],
      extras: each(13, 10),
      gives: [],
    },
    {
      title: "cannot be told while the device is not known",
      lines: lamps(13),
      extras: device(undefined),
      gives: ["missing deviceRatingA way-1"],
    },
  ]);
});
