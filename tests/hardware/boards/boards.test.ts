import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { makeBoards } from "../../../hardware/boards/make-boards.ts";
import { boardSchema } from "../../../shared/board/board.schema.ts";
import { boardProblems } from "../../../shared/board/board-problems.ts";

const folder = "hardware/boards";
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
const read = (name: string): unknown => JSON.parse(readFileSync(`${folder}/${name}`, "utf8"));

describe("the boards that ship", () => {
  it("are the small board, the workshop board with its coded twin, and the lighting board", () => {
    expect(files.sort()).toEqual(["lighting.json", "small.json", "workshop-coded.json", "workshop.json"]);
  });

  it.each(files)("%s is what its script makes", (name) => {
    expect(read(name)).toEqual(JSON.parse(JSON.stringify(makeBoards()[name.replace(".json", "")])));
  });

  it.each(files)("%s gives every line to one thing, within the board", (name) => {
    expect(boardProblems(boardSchema.parse(read(name)))).toEqual([]);
  });

  it.each([
    { name: "workshop.json", lineCount: 206 },
    { name: "lighting.json", lineCount: 201 },
  ])("$name has $lineCount lines and stations that stand apart on its face", ({ name, lineCount }) => {
    const board = boardSchema.parse(read(name));
    expect(board.wiring.kind === "chain" && board.wiring.lineCount).toBe(lineCount);
    for (const [index, { face, id }] of board.stations.entries())
      for (const other of board.stations.slice(index + 1)) {
        const apart =
          face.x + face.width <= other.face.x ||
          other.face.x + other.face.width <= face.x ||
          face.y + face.height <= other.face.y ||
          other.face.y + other.face.height <= face.y;
        expect([id, other.id, apart]).toEqual([id, other.id, true]);
      }
  });

  it("the coded twin has the same stations, and code contacts at every entry", () => {
    const plain = boardSchema.parse(read("workshop.json"));
    const coded = boardSchema.parse(read("workshop-coded.json"));
    expect(coded.stations.map(({ id }) => id)).toEqual(plain.stations.map(({ id }) => id));
    expect(
      coded.stations.flatMap(({ entries }) => entries).every((entry) => entry.codeContacts?.length === 3),
    ).toBe(true);
  });
});
