import { describe } from "vitest";
import { outsideTask } from "../../../shared/rules/outside-task.ts";
import { conductorTable } from "./conductor-table.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { ring } from "./table.ts";

const task = (...ids: string[]) => ({
  taskStations: ["way-1", "socket-1", "socket-2", "socket-3", ...ids].map(stationId),
});

describe("a cable", () => {
  conductorTable(outsideTask, [
    { title: "within the task is no matter", lines: ring, extras: task(), gives: [] },
    {
      title: "to a station that the task does not use is noted",
      lines: [...ring, "socket-1.c socket-4.a", "socket-4.b socket-5.a"],
      extras: task(),
      gives: ["note outside-task socket-1.c~socket-4.a", "note outside-task socket-4.b~socket-5.a"],
    },
    {
      title: "from a way that the task leaves empty is noted",
      lines: [...ring, "way-2.a socket-1.c"],
      extras: task(),
      gives: ["note outside-task socket-1.c~way-2.a"],
    },
    {
      title: "to a station that the task uses is no matter",
      lines: [...ring, "socket-1.c socket-4.a"],
      extras: task("socket-4"),
      gives: [],
    },
    { title: "may go anywhere where no task is set", lines: [...ring, "socket-1.c socket-4.a"], gives: [] },
  ]);
});
