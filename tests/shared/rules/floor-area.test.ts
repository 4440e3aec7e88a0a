import { describe } from "vitest";
import { floorArea } from "../../../shared/rules/floor-area.ts";
import { ring, table } from "./table.ts";

const way = (floorAreaM2: number | undefined, deviceRatingA: number | null = 32) =>
  ({ settings: { "way-1": { floorAreaM2, deviceRatingA: deviceRatingA ?? undefined } } }) as never;
const radial = ["way-1.a socket-1.a 4"];

// On-Site Guide Table H2.1 (formerly Table 8A): ring 100 m², 32 A radial 75 m², 20 A radial 50 m². Guidance.
describe("the floor area of a socket-outlet circuit", () => {
  table(floorArea, [
    { title: "may be 100 m² on a ring", lines: ring, extras: way(100), gives: [] },
    {
      title: "is queried above 100 m² on a ring",
      lines: ring,
      extras: way(101),
      gives: ["query ring way-1"],
    },
    { title: "may be 75 m² on a 32 A radial", lines: radial, extras: way(75), gives: [] },
    {
      title: "is queried above 75 m² on a 32 A radial",
      lines: radial,
      extras: way(76),
      gives: ["query radial way-1"],
    },
    {
      title: "is queried above 75 m² on a 30 A radial",
      lines: radial,
      extras: way(76, 30),
      gives: ["query radial way-1"],
    },
    { title: "may be 50 m² on a 20 A radial", lines: radial, extras: way(50, 20), gives: [] },
    {
      title: "is queried above 50 m² on a 20 A radial",
      lines: radial,
      extras: way(51, 20),
      gives: ["query radial way-1"],
    },
    { title: "has no figure on a 16 A radial", lines: radial, extras: way(90, 16), gives: [] },
    { title: "is not judged where none is stated", lines: ring, extras: way(undefined), gives: [] },
    {
      title: "is no matter without socket outlets",
      lines: ["way-1.a cooker-1.a 6"],
      extras: way(500),
      gives: [],
    },
    ...[16, 20, 40].map((deviceA) => ({
      title: `is queried above 100 m² on a ring on ${deviceA} A, which earns it no more`,
      lines: ring,
      extras: way(101, deviceA),
      gives: ["query ring way-1"],
    })),
    { title: "may be 100 m² on a ring on 16 A", lines: ring, extras: way(100, 16), gives: [] },
    {
      title: "of a ring is told without its device",
      lines: ring,
      extras: way(101, null),
      gives: ["query ring way-1"],
    },
    {
      title: "of a radial cannot be told while the device is not known",
      lines: radial,
      extras: way(90, null),
      gives: ["missing deviceRatingA way-1"],
    },
  ]);
});
