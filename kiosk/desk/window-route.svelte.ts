import { type Route, routeOf } from "./route.ts";

/** The route of the window, as it changes. */
export class WindowRoute {
  now = $state.raw<Route>(routeOf(window.location.hash));

  constructor() {
    window.addEventListener("hashchange", () => (this.now = routeOf(window.location.hash)));
  }
}
