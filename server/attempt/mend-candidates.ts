import {
  type CableId,
  cableId,
  cableOfConductor,
  type ConductorId,
  endsOfCable,
  entryId,
  type EntryId,
  type StationId,
  stationOf,
} from "../../shared/board/ids.ts";
import type { MendStep, Said } from "../../shared/protocol/bench-view.ts";
import { type SettingKey, settingKeys } from "../../shared/protocol/attempt-words.ts";
import type { Place, RuleId } from "../../shared/rules/rule.ts";
import type { Finding, Verdict } from "../../shared/rules/verdict.ts";
import type { Change } from "../../shared/scenario/change.ts";
import { choicesOf } from "../../shared/scenario/setting-choices.ts";
import type { AttemptRun } from "./attempt-run.ts";
import type { SizedCable } from "./settings.ts";

/** Something one touch does about a note: what the key says, and the acts it stands for, in their order. */
export interface Mend {
  said: Said;
  steps: [MendStep, ...MendStep[]];
}

/** Rules that are about how thick a cable is. */
const sizeRules: readonly RuleId[] = [
  ...(["ring-cable", "spur-cable", "radial-cable", "device-cable", "fused-cable", "least-size"] as const),
  ...(["lighting-device", "volt-drop", "fault-loop", "cpc-size"] as const),
];

/** Rules that are about what is set at a station, and the settings that may put it right, the likeliest first. */
const settingRules: Partial<Record<RuleId, readonly SettingKey[]>> = {
  "fuse-size": ["fuseRatingA"],
  "fused-cable": ["fuseRatingA"],
  "fused-load": ["fuseRatingA"],
  "radial-cable": ["deviceRatingA"],
  "device-cable": ["deviceRatingA"],
  "ring-device": ["deviceRatingA"],
  "lighting-device": ["deviceRatingA"],
  "design-current": ["deviceRatingA"],
  "fault-loop": ["deviceCurve", "deviceRatingA"],
  "accessory-rating": ["ratingA"],
  isolation: ["switched", "ratingA"],
  unswitched: ["switched"],
};

/** Rules that say how the cores of a cable are joined: plugged anew as a whole they are joined core to core. */
const coreRules: readonly RuleId[] = [
  ...(["polarity", "cpc-missing", "conductor-missing", "ring-open", "split-conductors", "short"] as const),
  "neutral-earth",
];

/** Rules about a cable that ought not to be there. */
const pullRules: readonly RuleId[] = [
  ...(["short", "neutral-earth", "two-ways", "borrowed-neutral", "ring-bridged", "ring-loop"] as const),
  ...(["spur-on-spur", "spur-one-point", "spur-per-point", "dead-end-lead", "outside-task"] as const),
  ...(["self-lead", "crowded-contact", "ring-through-fuse", "split-conductors"] as const),
];

/** What might mend a finding, or several of one cause, the gentlest first. Whether it does is for the rules to say. */
export function mendCandidates(run: AttemptRun, group: readonly Finding[], verdict: Verdict): Mend[] {
  const [first] = group;
  if (!first) return [];
  const places = group.flatMap(({ causes, places }) => [...causes, ...places]);
  const near = new Set(places.flatMap(cableOfPlace));
  const cables = run.cables.filter(({ id, isAsFound }) => near.has(id) && !isAsFound);
  const stations = new Set([
    ...places.flatMap(({ kind, id }) => (kind === "station" ? [id as StationId] : [])),
    ...cables.flatMap(({ id }) => verdict.figures.cables[id]?.deviceAt ?? []),
  ]);
  return [
    ...(sizeRules.includes(first.rule) ? sizes(run, cables) : []),
    ...(settingRules[first.rule] ?? []).flatMap((key) =>
      [...stations].flatMap((station) => settings(run, station, key)),
    ),
    ...(first.rule === "wrong-side" ? [...stations].flatMap((station) => turned(run, station)) : []),
    ...(coreRules.includes(first.rule) ? cables.filter(hasOwnContacts(run)).flatMap(anew) : []),
    ...(pullRules.includes(first.rule) ? cables.map(pulled) : []),
  ];
}

/** A change of the wiring as one touch; none for what a touch cannot do, and for a new cable, which is the learner's to find. */
export function mendsOf(run: AttemptRun, change: Change): Mend[] {
  const cable = (id: CableId): SizedCable[] => run.cables.filter((one) => one.id === id && !one.isAsFound);
  switch (change.kind) {
    case "pull":
      return cable(change.cable).map(pulled);
    case "plug": {
      const { from, to } = change.cable;
      return change.isAgain ? cable(cableId(from, to)).filter(hasOwnContacts(run)).flatMap(anew) : [];
    }
    case "size":
      return sizes(run, cable(change.cable)).filter(({ steps: [step] }) => isValue(step, change.csaMm2));
    case "set":
      return settingKeys
        .filter((key) => key === change.key)
        .flatMap((key) => settings(run, change.station, key))
        .filter(({ steps: [step] }) => isValue(step, change.value));
  }
}

const isValue = (step: MendStep, value: unknown): boolean => step.act === "declare" && step.value === value;

function cableOfPlace({ kind, id }: Place): CableId[] {
  if (kind === "cable") return [id as CableId];
  return kind === "conductor" ? [cableOfConductor(id as ConductorId)] : [];
}

/** Every size there is for all of the cables, the thinnest first. What a plug's code says nobody can declare. */
function sizes(run: AttemptRun, cables: readonly SizedCable[]): Mend[] {
  if (cables.length === 0 || cables.some(({ by }) => by === "sensed")) return [];
  const offeredMm2 = run.kit.scenario.parts.cableCsaMm2.toSorted((a, b) => a - b);
  return offeredMm2.flatMap((csaMm2) => {
    const [step, ...more] = cables
      .filter((cable) => cable.csaMm2 !== csaMm2)
      .map(({ id }): MendStep => ({ act: "declare", subject: id, key: "csaMm2", value: csaMm2 }));
    return step ? [{ said: { key: "mend.csaMm2", facts: { csaMm2 } }, steps: [step, ...more] }] : [];
  });
}

/** Every other choice for a setting that the learner makes, the nearest to what is set first. */
function settings(run: AttemptRun, station: StationId, key: SettingKey): Mend[] {
  const isChosen = run.kit.stripped.stations
    .find(({ id }) => id === station)
    ?.chosen?.some((chosen) => chosen === key);
  if (isChosen !== true) return [];
  const now = run.settings.values.get(station)?.get(key)?.value;
  const far = (value: unknown): number => Math.abs(Number(value) - Number(now ?? 0));
  return choicesOf(run.kit.stripped, key)
    .filter((value) => value !== now)
    .toSorted((a, b) => far(a) - far(b))
    .map((value) => ({
      said: { key: `mend.${key}`, facts: { station, value } },
      steps: [{ act: "declare", subject: station, key, value }],
    }));
}

/** All cables of a two-sided unit changed over: what is on its supply goes to its load, and the other way round. */
function turned(run: AttemptRun, station: StationId): Mend[] {
  const entries = run.board.stations.find(({ id }) => id === station)?.entries ?? [];
  const free = new Map(
    entries.map(({ side }) => [
      side,
      entries.filter((entry) => entry.side === side).map(({ letter }) => entryId(station, letter)),
    ]),
  );
  const moved = run.cables
    .filter(({ id }) => endsOfCable(id).some((end) => stationOf(end) === station))
    .map((cable) => {
      const [from, to] = endsOfCable(cable.id);
      const [end, stays] = stationOf(from) === station ? [from, to] : [to, from];
      const side = entries.find(({ letter }) => entryId(station, letter) === end)?.side;
      const entry = free.get(side === "load" ? "supply" : "load")?.shift();
      return { cable, stays, entry };
    });
  const pulls = moved.map(({ cable }): MendStep => ({ act: "pull", cable: cable.id }));
  const plugs = moved.flatMap(({ cable, stays, entry }) => (entry ? [plugOf(entry, stays, cable)] : []));
  const [first, ...more] = [...pulls, ...plugs];
  // A cable found there stays as it was found, and one that finds no terminal cannot be moved.
  if (!first || plugs.length < moved.length || moved.some(({ cable }) => cable.isAsFound)) return [];
  return [{ said: { key: "mend.turn", facts: { station } }, steps: [first, ...more] }];
}

const plugOf = (entryA: EntryId, entryB: EntryId, { csaMm2 }: SizedCable): MendStep => ({
  act: "plug-cable",
  entryA,
  entryB,
  ...(csaMm2 === undefined ? {} : { csaMm2 }),
});

function anew(cable: SizedCable): Mend[] {
  const [from, to] = endsOfCable(cable.id);
  return [
    {
      said: { key: "mend.cores", facts: { cable: cable.id } },
      steps: [{ act: "pull", cable: cable.id }, plugOf(from, to, cable)],
    },
  ];
}

const pulled = ({ id }: SizedCable): Mend => ({
  said: { key: "mend.pull", facts: { cable: id } },
  steps: [{ act: "pull", cable: id }],
});

/** Where plugs are stacked on one another nobody knows which of them a cable would leave with. */
const hasOwnContacts =
  ({ joints }: AttemptRun) =>
  ({ conductors }: SizedCable): boolean =>
    !conductors.flat().some((contact) => joints.some((joint) => joint.includes(contact)));
