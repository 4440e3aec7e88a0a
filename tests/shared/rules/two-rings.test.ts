import { describe } from "vitest";
import { twoRings } from "../../../shared/rules/two-rings.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a way", () => {
  conductorTable(twoRings, [
    { title: "may have one ring", lines: ring, gives: [] },
    {
      title: "with two rings has to be justified",
      lines: [...ring, "way-1.c socket-4.a", "socket-4.b socket-5.a", "socket-5.b way-1.d"],
      gives: ["query two way-1"],
    },
    { title: "may have a ring and a spur", lines: [...ring, "way-1.c socket-4.a"], gives: [] },
    {
      title: "beside another way may have a ring each",
      lines: [...ring, "way-2.a socket-4.a", "socket-4.b way-2.b"],
      gives: [],
    },
  ]);
});
