import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { WholeCables } from "../../../kiosk/link/whole-cables.ts";
import type { EntryId } from "../../../shared/board/ids.ts";
import type { AttemptView, BenchView, SensedCable } from "../../../shared/protocol/bench-view.ts";
import { workshopFace } from "../faces.ts";
import { attempt, cable } from "../views.ts";

const [entryA, entryB] = ["way-2.a", "socket-1.a"] as EntryId[] as [EntryId, EntryId];
const whole = cable(entryA, entryB, [], { isUnsaved: true });
/** In the order that a view gives them. */
const sorted = whole.conductors.toSorted((a, b) => (a.from < b.from ? -1 : 1));
const withCores = (...roles: string[]): SensedCable => ({
  ...whole,
  conductors: sorted.filter(({ from }) => roles.some((role) => from.endsWith(`.${role}`))),
});
const viewOf = (...cables: SensedCable[]): BenchView =>
  ({ board: workshopFace, attempt: attempt({ cables }) }) as BenchView;

describe("a cable that is plugged from the page", () => {
  let shown: BenchView[];
  let foreseen: AttemptView[];
  let cables: WholeCables;

  beforeEach(() => {
    vi.useFakeTimers();
    [shown, foreseen] = [[], []];
    cables = new WholeCables({ show: (view) => shown.push(view), foresee: (next) => foreseen.push(next) });
  });
  afterEach(() => vi.useRealTimers());

  it("is shown once all its pins are in, and foreseen with the first", () => {
    cables.expect({ entryA, entryB });
    cables.hear(viewOf(withCores("L")));
    cables.hear(viewOf(withCores("L", "N")));
    expect(shown).toEqual([]);
    const last = viewOf(withCores("L", "N", "E"));
    cables.hear(last);
    expect(shown).toEqual([last]);
    expect(foreseen).toEqual([last.attempt]);
    vi.runAllTimers();
    expect(shown).toEqual([last]);
  });

  it("is shown as far as it is in where a pin does not come", () => {
    cables.expect({ entryA, entryB });
    cables.hear(viewOf(withCores("L")));
    const half = viewOf(withCores("L", "N"));
    cables.hear(half);
    vi.advanceTimersByTime(44);
    expect(shown).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(shown).toEqual([half]);
    const next = viewOf(withCores("N"));
    cables.hear(next);
    expect(shown).toEqual([half, next]);
  });

  it("keeps back nothing before its first pin is in, nor what comes after it is whole", () => {
    cables.expect({ entryA, entryB });
    const views = [viewOf(), viewOf(withCores("L", "N", "E")), viewOf(withCores("L"))];
    for (const view of views) cables.hear(view);
    expect(shown).toEqual(views);
  });

  it("is shown as it is at once where something else is done", () => {
    cables.expect({ entryA, entryB });
    const half = viewOf(withCores("L"));
    cables.hear(half);
    cables.release();
    expect(shown).toEqual([half]);
  });

  it("is the only one that is waited for", () => {
    const half = viewOf(withCores("L"));
    cables.hear(half);
    cables.expect({ entryA, entryB: "socket-2.a" as EntryId });
    cables.hear(half);
    expect(shown).toEqual([half, half]);
    expect(foreseen).toEqual([]);
  });

  it("is waited for where its first pin came onto the disk with its size", () => {
    cables.expect({ entryA, entryB });
    const { isUnsaved: _, ...kept } = withCores("L");
    cables.hear(viewOf(kept));
    expect(shown).toEqual([]);
    expect(foreseen).toEqual([viewOf(withCores("L", "N", "E")).attempt]);
    const last = viewOf(withCores("L", "N", "E"));
    cables.hear(last);
    expect(shown).toEqual([last]);
  });

  it("is no longer waited for once something else is done", () => {
    cables.expect({ entryA, entryB });
    cables.release();
    const half = viewOf(withCores("L"));
    cables.hear(half);
    expect(shown).toEqual([half]);
  });
});
