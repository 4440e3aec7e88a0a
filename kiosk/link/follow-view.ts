import type { BenchView } from "../../shared/protocol/bench-view.ts";
import { changed, type ViewChange } from "../../shared/protocol/view-change.ts";

interface Hearing<View> {
  on(name: "view", hear: (whole: View) => void): unknown;
  on(name: "change", hear: (change: ViewChange) => void): unknown;
}

/** Joins what a socket brings: a view that comes whole, with each connection anew, and what changes in it. */
export function followView<View = BenchView>(socket: Hearing<View>, onView: (view: View) => void): void {
  let view: View | undefined;
  socket.on("view", (whole) => {
    view = whole;
    onView(view);
  });
  socket.on("change", (change) => {
    if (view === undefined) return;
    view = changed(view, change) as View;
    onView(view);
  });
}
