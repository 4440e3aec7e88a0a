import type { Banner } from "../../shared/protocol/bench-view.ts";

/** Banners that ask nobody to stop: they are told in the line under the task and take no room from the work. */
export const isMild = (kind: Banner["kind"]): boolean =>
  kind === "clock-unset" || kind === "setting-clash" || kind === "time-left";
