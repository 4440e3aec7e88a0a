import { describe } from "vitest";
import { crowdedContact } from "../../../shared/rules/crowded-contact.ts";
import { conductorTable } from "./conductor-table.ts";
import { ring } from "./table.ts";

describe("a contact", () => {
  conductorTable(crowdedContact, [
    { title: "has one lead", lines: ring, gives: [] },
    {
      title: "with two leads is crowded, one finding an entry",
      lines: [...ring, "socket-1.b socket-4.a"],
      gives: ["fix stacked socket-1.b"],
    },
    {
      title: "with one core of another cable on it is crowded",
      lines: [...ring, "socket-1.c socket-4.a", "socket-2.c socket-4.a E:E"],
      gives: ["fix stacked socket-4.a"],
    },
    {
      title: "beside others in one entry may belong to another cable",
      lines: [...ring, "socket-1.c socket-4.a L:L", "socket-1.c socket-5.a N:N"],
      gives: [],
    },
  ]);
});
