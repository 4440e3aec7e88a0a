import { describe, expect, it } from "vitest";
import { taskLines } from "../../../shared/text/task-lines.ts";

describe("the text of a task", () => {
  it("is an opening, and what is asked for by number", () => {
    expect(taskLines("Ida moves in.\n1. Build a ring.\n2. Feed socket outlet 3.")).toEqual({
      opening: "Ida moves in.",
      asks: [
        { number: 1, text: "Build a ring." },
        { number: 2, text: "Feed socket outlet 3." },
      ],
    });
  });

  it("of an old log is one opening: a number within a sentence asks for nothing", () => {
    const old = "Use a 2.5 mm² cable from way 1. Socket outlet 2 stays.";
    expect(taskLines(old)).toEqual({ opening: old, asks: [] });
  });
});
