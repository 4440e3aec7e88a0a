import type { StationId } from "../../../shared/board/ids.ts";
import type { StationKind } from "../../../shared/board/station-kinds.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";
import type { Language } from "../../../shared/text/languages.ts";
import type { BoardStationView } from "../../../shared/protocol/author-view.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { firstFree } from "../../../shared/text/first-free.ts";
import type { Text } from "../../../shared/text/text.schema.ts";

export type Requirement = Scenario["requirements"][number];
export type DraftStation = Scenario["stations"][number];

/** A house with nothing in it yet, of the size that the plans of the bench have: 11 m by 9.4 m. */
export const emptyDraft = (
  id: string,
  texts: Record<"title" | "place" | "teaches" | "opening", Text>,
  supply: Scenario["supply"],
): Scenario => ({
  version: 1,
  id,
  revision: 1,
  title: texts.title,
  place: texts.place,
  level: 1,
  teaches: texts.teaches,
  task: texts.opening,
  isExistingCircuit: false,
  supply,
  stations: [],
  plan: {
    width: 110,
    height: 94,
    rooms: [],
    routeClasses: {
      wall: { method: "C", depthMm: 15 },
      floor: { method: "C" },
      insulated: { method: "103" },
    },
    walls: [],
    places: [],
  },
  loads: [],
  parts: { cableCsaMm2: [1.5, 2.5] },
  requirements: [],
  asFound: { cables: [] },
  modelAnswers: [],
  wrongAnswers: [],
});

/** What is usually fitted, to begin with (common practice, no source); the bench says in every rule what it makes of it. */
const usualSettings: Partial<Record<StationKind, StationSettings>> = {
  way: { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32, rcdMa: 30 },
  fcu: { fuseRatingA: 13, switched: true },
  isolator: { ratingA: 20, poles: 2 },
  "junction-box": { ratingA: 32 },
  "plate-switch": { poles: 1, switching: "one-way" },
  "cooker-control": { ratingA: 45, distanceToApplianceM: 1 },
};

/** With a station of the board, with what it has there and what is usually fitted. */
export const withStation = (draft: Scenario, { id, kind, entries, settings }: BoardStationView): Scenario => {
  const station: DraftStation = { id, kind, entries, settings: { ...usualSettings[kind], ...settings } };
  const isLess = Object.keys(station.settings ?? {}).length === 0;
  const { settings: _none, ...bare } = station;
  return { ...draft, stations: [...draft.stations, isLess ? bare : station] };
};

const uses = ({ cables }: Built, id: StationId): boolean =>
  cables.some(({ from, to }) => [from, to].some((entry) => entry.startsWith(`${id}.`)));

/** Without a station, and without all that was said of it: what asks for it, and answers that use it. */
export function withoutStation(draft: Scenario, id: StationId): Scenario {
  const { plan, asFound } = draft;
  return {
    ...draft,
    stations: draft.stations.filter((one) => one.id !== id),
    plan: { ...plan, places: plan.places.filter(({ station }) => station !== id) },
    loads: draft.loads.filter(({ station }) => station !== id),
    requirements: draft.requirements.flatMap((one) => withoutName(one, id) ?? []),
    asFound: uses(asFound, id) ? { cables: [] } : asFound,
    modelAnswers: draft.modelAnswers.filter((built) => !uses(built, id)),
    wrongAnswers: draft.wrongAnswers.filter(({ built }) => !uses(built, id)),
  };
}

function withoutName(requirement: Requirement, id: StationId): Requirement | undefined {
  if (("way" in requirement && requirement.way === id) || ("of" in requirement && requirement.of === id))
    return undefined;
  if (("fcu" in requirement && requirement.fcu === id) || ("by" in requirement && requirement.by === id))
    return undefined;
  if (requirement.kind === "kept")
    return requirement.cables.some((cable) => cable.includes(`${id}.`)) ? undefined : requirement;
  if (!("stations" in requirement)) return requirement;
  const stations = requirement.stations.filter((one) => one !== id);
  return stations.length > 0 ? { ...requirement, stations } : undefined;
}

/** What is fitted at a station, or left to the learner to choose. */
export const withSetting = <Key extends keyof StationSettings>(
  draft: Scenario,
  id: StationId,
  key: Key,
  value: StationSettings[Key] | "chosen",
): Scenario => ({
  ...draft,
  stations: draft.stations.map((station): DraftStation => {
    if (station.id !== id) return station;
    const { [key]: _before, ...rest } = station.settings ?? {};
    const chosen = (station.chosen ?? []).filter((one) => one !== key);
    const next =
      value === "chosen" ? [...chosen, key as NonNullable<DraftStation["chosen"]>[number]] : chosen;
    const { chosen: _chosen, ...bare } = station;
    return {
      ...bare,
      settings: value === "chosen" || value === undefined ? rest : { ...rest, [key]: value },
      ...(next.length > 0 ? { chosen: next } : {}),
    };
  }),
});

/** What is run at a point, in watts; 0 takes it away. */
export const withLoad = (draft: Scenario, station: StationId, powerW: number): Scenario => {
  const others = draft.loads.filter((load) => load.station !== station);
  return { ...draft, loads: powerW > 0 ? [...others, { station, powerW }] : others };
};

/** The ratings that are offered where a learner chooses; none are stated where nothing is left to choose. */
export function withParts(draft: Scenario, parts: Partial<Scenario["parts"]>): Scenario {
  const stated = Object.entries({ ...draft.parts, ...parts }).filter(
    ([, values]) => values && values.length > 0,
  );
  const { cableCsaMm2 = [2.5], ...ratings } = Object.fromEntries(stated) as Partial<Scenario["parts"]>;
  return { ...draft, parts: { cableCsaMm2, ...ratings } };
}

/** Answers were wired for what was there: a change of it may leave them no answers, which the bench then says. */
export const withAnswer = (
  draft: Scenario,
  kind: "asFound" | "model" | "wrong",
  built: Built,
  name: string,
): Scenario => {
  switch (kind) {
    case "asFound":
      return { ...draft, asFound: built, isExistingCircuit: built.cables.length > 0 };
    case "model":
      return { ...draft, modelAnswers: [...draft.modelAnswers, built] };
    case "wrong": {
      const taken = new Set(draft.wrongAnswers.map((answer) => answer.name));
      const free = firstFree(name, (one) => taken.has(one), " ");
      return {
        ...draft,
        wrongAnswers: [...draft.wrongAnswers, { name: free, built, findings: [] }],
      };
    }
  }
};

/** An id out of a title: letters and digits, what stands between them one hyphen. */
export const slugOf = (title: string): string =>
  title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/ł/g, "l")
    .replace(/Ł/g, "L")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase()
    .slice(0, 40);

/** With three hints of its own, a nudge, the rule, the place: one of them said anew in a language. */
export const withHint = (draft: Scenario, at: number, language: Language, said: string): Scenario =>
  said === "" || !draft.hints
    ? draft
    : {
        ...draft,
        hints: draft.hints.map((hint, one) => (one === at ? { ...hint, [language]: said } : hint)),
      };

/** Without hints of its own: the bench makes them of what is wrong and what is asked. */
export function withoutHints(draft: Scenario): Scenario {
  const { hints: _hints, ...others } = draft;
  return others;
}
