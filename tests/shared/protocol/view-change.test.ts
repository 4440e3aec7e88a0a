import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changed, changeOf } from "../../../shared/protocol/view-change.ts";
import { testDepth } from "../../depth.ts";

/** What went over the wire: JSON and back. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

const after = (before: unknown, now: unknown): unknown => {
  const change = changeOf(before, now);
  return change ? changed(before, sent(change)) : before;
};

const item = fc.record({
  id: fc.constantFrom("a", "b", "7", "10", "socket-1.a~way-1.a"),
  of: fc.jsonValue(),
});
const items = fc.uniqueArray(item, { selector: ({ id }) => id, maxLength: 5 });
const view = fc.dictionary(
  fc.constantFrom("cables", "board", "step", "verdict"),
  fc.oneof(fc.jsonValue(), items, fc.record({ findings: items, isCurrent: fc.boolean() })),
);

describe("a change of a view", () => {
  it("turns the one before into the one after, whatever they hold", () => {
    fc.assert(
      fc.property(fc.tuple(view, view).map(sent), ([before, now]) => {
        const was = sent(before);
        expect(after(before, now)).toEqual(now);
        expect(before).toEqual(was);
      }),
      { numRuns: 500 * testDepth },
    );
  });

  it("is none where nothing changed, however it was made", () => {
    fc.assert(
      fc.property(view.map(sent), (one) => {
        expect(changeOf(one, sent(one))).toBeUndefined();
      }),
    );
  });

  it("of one thing in a list brings that thing alone, and its place in the list", () => {
    const one = { id: "one", share: 0.2, cores: ["L", "N"] };
    const other = { id: "other", share: 0.4, cores: ["L", "N"] };
    expect(changeOf([one, other], [one, { ...other, share: 0.5 }])).toEqual({
      items: { other: { of: { share: { to: 0.5 } } } },
    });
    expect(changeOf([other], [one, other])).toEqual({ items: { one: { to: one } }, order: ["one", "other"] });
    expect(changeOf([one, other], [other])).toEqual({ items: {}, order: ["other"] });
  });

  it("takes a key away, and gives one that is null", () => {
    expect(after({ verdict: {}, noBoard: 1 }, { verdict: null })).toEqual({ verdict: null });
  });

  it("leaves what did not change the very same", () => {
    const before = { board: { id: "small" }, step: "plan" };
    expect(
      (changed(before, changeOf(before, { ...sent(before), step: "wire" })!) as typeof before).board,
    ).toBe(before.board);
  });
});
