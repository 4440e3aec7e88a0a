import { describe, expect, it } from "vitest";
import { cableRows } from "../../../kiosk/plan/cable-rows.ts";
import type { DrawnCable } from "../../../kiosk/plan/draw-cables.ts";
import { endLabelId } from "../../../kiosk/plan/draw-labels.ts";
import type { Label } from "../../../kiosk/geometry/lay-labels.ts";
import { cable } from "../views.ts";

const drawn = (socket: number): DrawnCable => ({
  cable: cable(`socket-${socket}.a`, "way-2.a", []),
  line: [],
  cores: [],
  widthPx: 12,
  weight: undefined,
  hasLetters: false,
  texts: ["2.5"],
  looks: [],
  around: [],
});
const label = (id: string): Label => ({ id, form: 0, x: 1, y: 2, width: 30, height: 12 });
const drawingOf = (cables: readonly DrawnCable[], ...labels: Label[]) => ({
  cables,
  labels: new Map(labels.map((one) => [one.id, one])),
});
const [first, second] = [drawn(1), drawn(2)];
const idOf = ({ cable: { id } }: DrawnCable) => id;

describe("the cables on a plan", () => {
  it("have their own labels with them, those of their ends too", () => {
    const [size, letters] = [label(idOf(first)), label(endLabelId(idOf(first), "end"))];
    const rows = cableRows(drawingOf([first, second], size, letters), undefined, []);
    expect(rows.map(({ id, isComing }) => [id, isComing])).toEqual([
      [idOf(first), false],
      [idOf(second), false],
    ]);
    expect(rows[0]).toMatchObject({ drawn: first, label: size, tags: [undefined, letters] });
    expect(rows[1]).toMatchObject({ drawn: second, label: undefined, tags: [undefined, undefined] });
  });

  it("are the very same where nothing about them has changed, and another where their label has", () => {
    const [one, two] = [label(idOf(first)), label(idOf(second))];
    const before = cableRows(drawingOf([first, second], one, two), undefined, []);
    const after = cableRows(drawingOf([first, second], one, label(idOf(second))), undefined, before);
    expect(after[0]).toBe(before[0]);
    expect(after[1]).not.toBe(before[1]);
    const redrawn = cableRows(drawingOf([{ ...first }, second], one, two), undefined, before);
    expect(redrawn[0]).not.toBe(before[0]);
  });

  it("stand unseen, with the label they will have, while they are on their way", () => {
    const [one, moved, two] = [label(idOf(first)), label(idOf(first)), label(idOf(second))];
    const [drawing, ahead] = [drawingOf([first], one), drawingOf([first, second], moved, two)];
    const before = cableRows(drawing, undefined, []);
    const rows = cableRows(drawing, ahead, before);
    expect(rows[0]).toBe(before[0]);
    expect(rows[1]).toMatchObject({ drawn: second, label: two, isComing: true });
    const there = cableRows(ahead, undefined, rows);
    expect(there[0]?.label).toBe(moved);
    expect(there[1]).toMatchObject({ drawn: second, label: two, isComing: false });
  });
});
