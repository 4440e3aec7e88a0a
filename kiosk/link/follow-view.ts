import type { BenchView } from "../../shared/protocol/bench-view.ts";
import type { ToBench } from "../../shared/protocol/socket-events.ts";
import { changed } from "../../shared/protocol/view-change.ts";

interface Hearing {
  on<Name extends keyof ToBench>(name: Name, hear: ToBench[Name]): unknown;
}

/** Joins what a socket brings: a view that comes whole, with each connection anew, and what changes in it. */
export function followView(socket: Hearing, onView: (view: BenchView) => void): void {
  let view: BenchView | undefined;
  socket.on("view", (whole) => {
    view = whole;
    onView(view);
  });
  socket.on("change", (change) => {
    if (!view) return;
    view = changed(view, change) as BenchView;
    onView(view);
  });
}
