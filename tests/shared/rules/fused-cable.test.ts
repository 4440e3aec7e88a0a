import { describe } from "vitest";
import { fusedCable } from "../../../shared/rules/fused-cable.ts";
import { ring, table } from "./table.ts";

const fused = (words: string) => [...ring, "socket-1.c fcu-1.a", `fcu-1.c socket-4.a ${words}`];
const fuse = (fuseRatingA: number | undefined) => ({ settings: { "fcu-1": { fuseRatingA } as never } });
const cable = "fcu-1.c~socket-4.a";

// Table 4D5: 1.5 mm² C 20 A, 101 13 A, 103 10 A; 1.0 mm² 101 10.5 A, 103 8 A. A BS 1362 fuse asks fuse <= Iz.
describe("cable behind the fuse of a connection unit", () => {
  table(fusedCable, [
    {
      title: "in 1.5 mm² passes on 13 A to as many points as one likes",
      lines: [...fused("1.5"), "socket-4.b socket-5.a 1.5", "socket-5.b socket-6.a 1.5"],
      gives: [],
    },
    { title: "of just 13 A passes on 13 A", lines: fused("1.5 method-101"), gives: [] },
    { title: "of 10 A fails on 13 A", lines: fused("1.5 method-103"), gives: [`fix underrated ${cable}`] },
    { title: "of 10 A passes on 5 A", lines: fused("1.5 method-103"), extras: fuse(5), gives: [] },
    { title: "of 10.5 A passes on 10 A", lines: fused("1 method-101"), extras: fuse(10), gives: [] },
    {
      title: "is held against the last fuse passed",
      lines: [...fused("1.5"), "socket-4.b fcu-2.a 1.5", "fcu-2.c lamp-1.a 1 method-103"],
      extras: { settings: { "fcu-2": { fuseRatingA: 3 } } },
      gives: [],
    },
    {
      title: "is judged where the unit is fed from its load side too",
      lines: [...ring, "socket-1.c fcu-1.c", "fcu-1.a socket-4.a 1.5 method-103"],
      gives: ["fix underrated fcu-1.a~socket-4.a"],
    },
    { title: "must be sized", lines: fused("?"), gives: [`missing csaMm2 ${cable}`] },
    {
      title: "must have a known fuse",
      lines: fused("1.5"),
      extras: fuse(undefined),
      gives: ["missing fuseRatingA fcu-1"],
    },
    {
      title: "is none where nothing is fed",
      lines: [...ring, "socket-1.c fcu-1.a"],
      extras: fuse(undefined),
      gives: [],
    },
  ]);
});
