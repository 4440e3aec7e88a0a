import type { FindingView } from "../../shared/protocol/bench-view.ts";

export type Weight = FindingView["weight"];
export type Place = FindingView["places"][number];
