import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type CableId, cableId, endsOfCable, roleOf, type StationId } from "../../shared/board/ids.ts";
import type { StationSetting } from "../../shared/protocol/bench-view.ts";
import { settingKeys, type SettingKey } from "../../shared/protocol/attempt-words.ts";
import type { Built, StrippedScenario } from "../../shared/scenario/scenario.schema.ts";
import { choicesOf } from "../../shared/scenario/setting-choices.ts";
import { type ResolvedSettings, resolveSettings, type Setting } from "../../shared/wiring/settings.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import type { StationSettings } from "../../shared/board/station-settings.schema.ts";
import type { JoinedCable } from "../../shared/wiring/joins-to-cables.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import type { AttemptState } from "./attempt-state.ts";

/** A cable with the size it counts as, and where that comes from. */
export interface SizedCable extends JoinedCable {
  csaMm2?: number;
  by?: Setting["by"];
  isAsFound: boolean;
}

/** The cables of a scenario that are there when the work begins, by id. */
export const asFoundCables = (scenario: StrippedScenario): Map<CableId, CableSpec> =>
  new Map(scenario.asFound.cables.map((cable) => [cableId(cable.from, cable.to), cable]));

const isSettingKey = (key: string): key is SettingKey => (settingKeys as readonly string[]).includes(key);

const saidByScenario = (scenario: StrippedScenario): Setting[] => [
  ...scenario.stations.flatMap(({ id, settings }) =>
    Object.entries({ ...settings, ...scenario.asFound.settings?.[id] }).flatMap(([key, value]): Setting[] =>
      isSettingKey(key) && value !== undefined ? [{ subject: id, key, value, by: "scenario" }] : [],
    ),
  ),
  ...scenario.asFound.cables.flatMap(({ from, to, csaMm2 }): Setting[] =>
    csaMm2 === undefined
      ? []
      : [{ subject: cableId(from, to), key: "csaMm2", value: csaMm2, by: "scenario" }],
  ),
];

/** What the plugs say: a code at either end of a cable gives its size. A code without a cable says nothing. */
function saidByCodes(cables: readonly JoinedCable[], plugged: Plugged, board: BoardDescription): Setting[] {
  const codeAt = new Map(plugged.codes.map(({ entry, code }) => [entry, code]));
  return cables.flatMap(({ id }) =>
    endsOfCable(id).flatMap((entry): Setting[] => {
      const csaMm2 = board.codes?.find(({ code }) => code === codeAt.get(entry))?.csaMm2;
      return csaMm2 === undefined ? [] : [{ subject: id, key: "csaMm2", value: csaMm2, by: "sensed" }];
    }),
  );
}

/** All settings of an attempt by their precedence: a sensed code, then what was declared, then the scenario. */
export const settingsOf = (
  scenario: StrippedScenario,
  board: BoardDescription,
  cables: readonly JoinedCable[],
  plugged: Plugged,
  { declared }: Pick<AttemptState, "declared">,
): ResolvedSettings =>
  resolveSettings([
    ...saidByScenario(scenario),
    ...[...declared.values()],
    ...saidByCodes(cables, plugged, board),
  ]);

/** The cables with the sizes they count as. */
export function sizeCables(
  cables: readonly JoinedCable[],
  scenario: StrippedScenario,
  { values }: ResolvedSettings,
): SizedCable[] {
  const asFound = asFoundCables(scenario);
  return cables.map((cable) => {
    const size = values.get(cable.id)?.get("csaMm2");
    const isAsFound = asFound.has(cable.id);
    if (typeof size?.value !== "number") return { ...cable, isAsFound };
    return { ...cable, isAsFound, csaMm2: size.value, by: size.by };
  });
}

/** Every setting a station of the scenario has or lets the learner choose, with its value by precedence. */
export const stationSettings = (scenario: StrippedScenario, { values }: ResolvedSettings): StationSetting[] =>
  scenario.stations.flatMap(({ id, chosen }) =>
    settingKeys.flatMap((key): StationSetting[] => {
      const isChosen = (chosen as readonly string[] | undefined)?.includes(key) ?? false;
      const found = values.get(id)?.get(key);
      if (!isChosen && !found) return [];
      const choices = isChosen ? choicesOf(scenario, key) : [];
      return [{ station: id, key, choices, ...(found ? { value: found.value, by: found.by } : {}) }];
    }),
  );

/** A cable that is found there keeps the way it is said to run; what is joined and how thick is what counts now. */
function specOf(cable: SizedCable, asFound: CableSpec | undefined): CableSpec {
  const [from, to] = endsOfCable(cable.id);
  const { csaMm2: _csaMm2, conductors: _conductors, ...run } = asFound ?? { from, to };
  return {
    ...run,
    from,
    to,
    ...(cable.csaMm2 === undefined ? {} : { csaMm2: cable.csaMm2 }),
    conductors: cable.conductors.map(([a, b]) => [roleOf(a), roleOf(b)]),
  };
}

/** What is built, as the wiring to judge is made from: the sensed cables with their sizes, and the settings. */
export function builtOf(
  scenario: StrippedScenario,
  cables: readonly SizedCable[],
  { values }: ResolvedSettings,
): Built {
  const asFound = asFoundCables(scenario);
  const settings: Record<StationId, StationSettings> = { ...scenario.asFound.settings };
  for (const { id } of scenario.stations) {
    const chosen = Object.fromEntries(
      [...(values.get(id) ?? [])]
        .filter(([, { by }]) => by !== "scenario")
        .map(([key, { value }]) => [key, value]),
    );
    if (Object.keys(chosen).length > 0) settings[id] = { ...settings[id], ...chosen };
  }
  return { settings, cables: cables.map((cable) => specOf(cable, asFound.get(cable.id))) };
}
