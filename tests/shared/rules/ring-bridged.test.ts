import { describe } from "vitest";
import { ringBridged } from "../../../shared/rules/ring-bridged.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a ring", () => {
  conductorTable(ringBridged, [
    { title: "is one round trip", lines: ring, gives: [] },
    { title: "may have a spur", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
    {
      title: "is bridged by a cable across it",
      lines: [...ring, "socket-1.c socket-3.c"],
      gives: ["fix bridged way-1"],
    },
    {
      title: "is bridged by a second cable beside one of its own",
      lines: [...ring, "socket-1.c socket-2.c"],
      gives: ["fix bridged way-1"],
    },
    {
      title: "is bridged by a third leg back to the way",
      lines: [...ring, "socket-2.c way-1.c"],
      gives: ["fix bridged way-1"],
    },
    {
      title: "is bridged in earth alone by a single lead, which is named",
      lines: [...ring, "socket-1.c socket-3.c E:E"],
      gives: ["fix bridged socket-1.c~socket-3.c"],
    },
    {
      title: "may be one of two on a way",
      lines: [...ring, "way-1.c socket-4.a", "socket-4.b way-1.d"],
      gives: [],
    },
  ]);
});
