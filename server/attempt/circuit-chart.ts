import { stationOf } from "../../shared/board/ids.ts";
import type { CircuitUse } from "../../shared/protocol/bench-view.ts";
import type { StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import { breakers } from "./make-dead.ts";

/** One line of a circuit chart: what a breaker feeds. */
export interface ChartLine {
  breaker: number;
  feeds: CircuitUse;
  isOfTask: boolean;
}

type Task = Pick<StrippedScenario, "stations" | "asFound">;

/** What the rest of an invented house has, for the breakers that are not the task's. */
const otherUses: readonly CircuitUse[] = ["lights", "cooker", "shower", "socket-outlets", "water-heater"];

/** What the stations of a task are used for, the most telling first. */
function usesOf({ stations }: Task): CircuitUse[] {
  const has = (test: (station: Task["stations"][number]) => boolean): boolean => stations.some(test);
  const appliance = (name: string) =>
    has(({ kind, settings }) => kind === "appliance" && settings?.appliance === name);
  const uses: [CircuitUse, boolean][] = [
    ["cooker", has(({ kind }) => kind === "cooker-control") || appliance("cooker")],
    ["shower", appliance("shower")],
    ["water-heater", appliance("water-heater")],
    ["socket-outlets", has(({ kind }) => kind === "socket-outlet")],
    ["lights", has(({ kind }) => kind === "luminaire" || kind === "ceiling-rose")],
  ];
  return uses.filter(([, isThere]) => isThere).map(([use]) => use);
}

/** The breaker of the task's circuit: the number of the first way that its cables were found on. */
export function breakerOfTask({ stations, asFound }: Task): number {
  const wired = asFound.cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]);
  const way = wired.find((id) => stations.some((one) => one.id === id && one.kind === "way"));
  const number = Number(/\d+$/.exec(way ?? "")?.[0] ?? 1);
  return breakers.find((breaker) => breaker === number) ?? breakers[0];
}

/** The chart on the picture's consumer unit: one breaker is the task's, the others feed what the task has not. */
export function circuitChart(task: Task): ChartLine[] {
  const uses = usesOf(task);
  const others = otherUses.filter((use) => !uses.includes(use));
  const ofTask = breakerOfTask(task);
  return breakers.map((breaker) => {
    const isOfTask = breaker === ofTask;
    return { breaker, feeds: (isOfTask ? uses[0] : others.shift()) ?? "lights", isOfTask };
  });
}
