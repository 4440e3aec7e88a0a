import { isToMend } from "../../shared/rules/rule.ts";
import { cableId, type StationId } from "../../shared/board/ids.ts";
import { designCurrentA, designSheet, type DesignInput } from "../../shared/electrical/design.ts";
import { judge } from "../../shared/rules/judge.ts";
import type { Finding, Verdict } from "../../shared/rules/verdict.ts";
import type { Built } from "../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import { installedCapacityA, tabulatedCapacityA } from "../../shared/trade/capacity.ts";
import { ringLimits } from "../../shared/trade/ring-limits.ts";
import type { ReferenceMethod } from "../../shared/trade/reference-method.ts";
import { nextDeviceRatingA } from "../../shared/trade/device-rating.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../shared/board/station-settings.schema.ts";
import type { ScenarioKit } from "../library.ts";

/** What there is to design in a scenario. Currents in amperes, sizes in mm². */
export interface PlanTask {
  isExisting: boolean;
  isRing: boolean;
  /** Ib of the whole circuit; undefined without stated loads. */
  designA: number | undefined;
  /** The device of the way where the scenario fixes it. */
  givenDeviceA: number | undefined;
  /** What may be chosen where it does not. */
  devicesA: number[];
  /** The given device, or the smallest to choose that is not below Ib. */
  nextDeviceA: number | undefined;
  sizesMm2: number[];
  /** What the loads of the circuit take together in watts, and how much of it is for cooking. */
  totalW: number;
  cookingW: number;
  hasSocketOutletInCookerControl: boolean;
  /** It for a device. */
  tabulatedFor: (deviceA: number | undefined) => number | undefined;
  /** What the current of the device is divided by for It, and the current it starts from. */
  factorsFor: (
    deviceA: number | undefined,
  ) => { startA: number; ca: number; cg: number; ci: number } | undefined;
  method: ReferenceMethod;
  /** What the table gives a size by that method. */
  tableA: (csaMm2: number) => number | undefined;
  /** The sizes, smallest first, with which new cable throughout leaves nothing to put right. */
  sizesFor: (deviceA: number | undefined) => number[];
  /** Iz of a size in the worst of the ways its cables are run. */
  installedFor: (csaMm2: number) => number | undefined;
  /** The fuses there are to choose, station by station. */
  fuses: FuseTask[];
}

/** The fuse of one FCU. */
export interface FuseTask {
  station: StationId;
  choicesA: number[];
  /** What the model answer has: the smallest that will do is usual. */
  usualA: number;
  /** What speaks against a fuse in the model answer; undefined where it will do. */
  against: (fuseRatingA: number) => Pick<Finding, "rule" | "facts"> | undefined;
}

/** A size to compare ways of running by; which of two carries less does not hang on it. */
const comparedCsaMm2 = 2.5;

/**
 * What there is to design in a scenario. Sizes, devices and fuses are right where a right answer with them in it
 * leaves nothing to put right: the worksheet and the verdict can not disagree.
 */
export function planTask(kit: ScenarioKit): PlanTask {
  const { scenario, stripped, routeBetween } = kit;
  const [model = { cables: [] }] = scenario.modelAnswers;
  const way = wayOf(kit);
  const station = scenario.stations.find(({ id }) => id === way);
  const fixed: StationSettings = { ...station?.settings, ...(way ? scenario.asFound.settings?.[way] : {}) };
  const isChosen = station?.chosen?.includes("deviceRatingA") ?? false;
  const shape = scenario.requirements.find(({ kind }) => kind === "shape");
  const isRing = shape?.kind === "shape" && shape.shape === "ring";
  const wiringOf = (built: Built) => toWiring({ scenario: stripped, built, routeBetween });
  const verdictOf = once((key: string) => judge(wiringOf(JSON.parse(key) as Built)));
  const isSound = (built: Built): boolean =>
    verdictOf(JSON.stringify(built)).findings.every(({ weight }) => !isToMend(weight));

  const givenDeviceA = isChosen ? undefined : fixed.deviceRatingA;
  const devicesA = isChosen ? [...(scenario.parts.deviceRatingA ?? [])].sort((a, b) => a - b) : [];
  const input = designInput(
    kit,
    fixed,
    isRing,
    worstRoute(wiringOf(model).cables, verdictOf(JSON.stringify(model)), way),
  );
  const designA = scenario.loads.length > 0 ? designCurrentA(input) : undefined;
  const nextDeviceA =
    givenDeviceA ??
    devicesA.find((ratingA) => designA === undefined || ratingA >= designA) ??
    (designA === undefined ? undefined : nextDeviceRatingA(designA));
  const sizesMm2 = [...scenario.parts.cableCsaMm2].sort((a, b) => a - b);

  return {
    isExisting: scenario.isExistingCircuit,
    isRing,
    designA,
    givenDeviceA,
    devicesA,
    nextDeviceA,
    sizesMm2,
    totalW: input.loads.reduce((sumW, { powerW }) => sumW + powerW, 0),
    cookingW: input.loads.reduce((sumW, { powerW, isCooking }) => sumW + (isCooking ? powerW : 0), 0),
    hasSocketOutletInCookerControl: input.hasSocketOutletInCookerControl ?? false,
    factorsFor: (deviceA) => {
      if (deviceA === undefined) return undefined;
      const sheet = designSheet({ ...input, deviceRatingA: deviceA });
      return sheet && { ...sheet.factors, startA: isRing ? ringLimits.leastCapacityA : deviceA };
    },
    method: input.method,
    tableA: (csaMm2) => tabulatedCapacityA(csaMm2, input.method),
    tabulatedFor: (deviceA) =>
      deviceA === undefined ? undefined : designSheet({ ...input, deviceRatingA: deviceA })?.tabulatedNeededA,
    sizesFor: (deviceA) =>
      sizesMm2.filter((csaMm2) => isSound(withDevice(withSize(model, kit, csaMm2), way, isChosen, deviceA))),
    installedFor: (csaMm2) => installedCapacityA({ ...routeOf(input), csaMm2 }),
    fuses: fusesOf(kit, model, (built) => verdictOf(JSON.stringify(built)).findings),
  };
}

/** The way the task is about: named by what is asked for, or the only one there is. */
function wayOf({ scenario }: ScenarioKit): StationId | undefined {
  for (const wanted of scenario.requirements) {
    if (wanted.kind === "one-circuit" && wanted.way) return wanted.way;
    if (wanted.kind === "shape") return wanted.of;
  }
  return scenario.stations.find(({ kind }) => kind === "way")?.id;
}

/** The way a cable of the way's own circuit is run that carries least. */
function worstRoute(
  cables: readonly CableSpec[],
  { figures }: Verdict,
  way: StationId | undefined,
): CableSpec | undefined {
  const own = cables.filter(({ from, to }) => figures.cables[cableId(from, to)]?.deviceAt === way);
  const capacityA = (cable: CableSpec): number =>
    installedCapacityA({ ...cable, method: cable.method ?? "C", csaMm2: comparedCsaMm2 }) ?? 0;
  return own.reduce<CableSpec | undefined>(
    (worst, cable) => (worst && capacityA(worst) <= capacityA(cable) ? worst : cable),
    undefined,
  );
}

function designInput(
  { scenario }: ScenarioKit,
  fixed: StationSettings,
  isRing: boolean,
  route: CableSpec | undefined,
): DesignInput {
  const kindOf = new Map(scenario.stations.map((station) => [station.id, station]));
  const isLighting = scenario.loads.every(({ station }) => {
    const kind = kindOf.get(station)?.kind;
    return kind === "luminaire" || kind === "ceiling-rose";
  });
  const isCooking = (station: StationId): boolean =>
    ["cooker", "hob", "oven"].includes(kindOf.get(station)?.settings?.appliance ?? "");
  return {
    shape: isRing ? "ring" : "radial",
    use: isLighting && scenario.loads.length > 0 ? "lighting" : "power",
    loads: scenario.loads.map(({ station, powerW }) => ({ powerW, isCooking: isCooking(station) })),
    hasSocketOutletInCookerControl: scenario.stations.some(({ settings }) => settings?.hasSocketOutlet),
    device:
      fixed.deviceStandard === "BS 3036" || fixed.deviceStandard === "BS 88-3"
        ? fixed.deviceStandard
        : (fixed.deviceCurve ?? "B"),
    lengthM: route?.lengthM ?? 0,
    method: route?.method ?? "C",
    ambientC: route?.ambientC ?? 30,
    groupedCircuits: route?.groupedCircuits ?? 1,
    insulationMm: route?.insulationMm ?? 0,
    zeOhm: scenario.supply.zeOhm ?? 0.35,
    isTt: scenario.supply.earthing === "TT",
    rcdMa: fixed.rcdMa ?? 30,
    hasSocketOutlets: scenario.stations.some(({ kind }) => kind === "socket-outlet"),
  };
}

const routeOf = ({ method, ambientC, groupedCircuits, insulationMm }: DesignInput) => ({
  method,
  ambientC,
  groupedCircuits,
  insulationMm,
});

/** An answer with all its new cables of one size; what was found there stays as it is. */
function withSize(built: Built, { scenario }: ScenarioKit, csaMm2: number): Built {
  const asFound = new Set(scenario.asFound.cables.map(({ from, to }) => cableId(from, to)));
  const cables = built.cables.map((cable) =>
    asFound.has(cableId(cable.from, cable.to)) ? cable : { ...cable, csaMm2 },
  );
  return { ...built, cables };
}

const withSetting = (built: Built, station: StationId, setting: StationSettings): Built => ({
  ...built,
  settings: { ...built.settings, [station]: { ...built.settings?.[station], ...setting } },
});

const withDevice = (
  built: Built,
  way: StationId | undefined,
  isChosen: boolean,
  deviceRatingA: number | undefined,
): Built =>
  isChosen && way && deviceRatingA !== undefined ? withSetting(built, way, { deviceRatingA }) : built;

const isAgainst = ({ weight }: Finding): boolean => weight !== "note";

/** Every fuse to choose. A query counts against one: protected, but not what a learner is to choose without a reason. */
function fusesOf(
  { scenario }: ScenarioKit,
  model: Built,
  findingsOf: (built: Built) => Finding[],
): FuseTask[] {
  const choicesA = [...(scenario.parts.fuseRatingA ?? [])].sort((a, b) => a - b);
  const usual = new Set(findingsOf(model).map(({ id }) => id));
  return scenario.stations
    .filter(({ chosen }) => chosen?.includes("fuseRatingA"))
    .flatMap(({ id }): FuseTask[] => {
      const usualA = model.settings?.[id]?.fuseRatingA;
      if (usualA === undefined) return [];
      const against = (fuseRatingA: number) =>
        findingsOf(withSetting(model, id, { fuseRatingA })).find(
          (finding) => isAgainst(finding) && !usual.has(finding.id),
        );
      return [{ station: id, choicesA, usualA, against }];
    });
}

/** A function of a text that is worked out once for each. */
function once<T>(work: (key: string) => T): (key: string) => T {
  const known = new Map<string, T>();
  return (key) => {
    const found = known.get(key) ?? work(key);
    known.set(key, found);
    return found;
  };
}
