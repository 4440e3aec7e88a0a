import { cableId, endsOfCable, type StationId } from "../board/ids.ts";
import { cableIdSchema } from "../board/ids.schema.ts";
import { coreRoles, type Side } from "../board/station-kinds.ts";
import type { FieldProblem } from "../reading/problem.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import { repeats } from "../reading/repeats.ts";
import { absentEntry, absentStation, type Stations } from "../wiring/absent-names.ts";
import { faultCountOf, hiddenFaultName } from "../wiring/hunt-words.ts";
import { stationsById } from "../wiring/conductors-of.ts";
import { cableProblems, loadProblems, wantProblems } from "../wiring/wiring-problems.ts";
import { settingProblems } from "../board/setting-problems.ts";
import { settingsByKind } from "../board/settings-by-kind.ts";
import { answerProblems } from "./answer-problems.ts";
import { hintLimit } from "./hint-limit.ts";
import { planProblems } from "./plan-problems.ts";
import type { Built, Scenario } from "./scenario.schema.ts";
import { scenarioEntries } from "./scenario-entries.ts";

type ScenarioStation = Scenario["stations"][number];

/** With every entry its kind can have: what a learner on a large board may use. */
const roomy = ({ id, kind, settings }: ScenarioStation): Station => ({
  id,
  kind,
  ...(settings ? { settings } : {}),
});

const standing = (station: ScenarioStation): Station => ({
  id: station.id,
  kind: station.kind,
  entries: scenarioEntries(station),
  ...(station.settings ? { settings: station.settings } : {}),
});

/** Ratings a learner chooses from the parts; what else is chosen has its choices by itself. */
const fromParts = ["deviceRatingA", "fuseRatingA"] as const;

function partsProblems({ stations, parts }: Scenario): FieldProblem[] {
  return fromParts
    .filter((key) => stations.some(({ chosen }) => chosen?.includes(key)) && !parts[key])
    .map((key) => ({
      field: `parts.${key}`,
      message: "it is missing, and a learner has to choose from it",
      remedy: "List the ratings that are offered.",
    }));
}

function stationProblems(station: ScenarioStation, index: number): FieldProblem[] {
  const field = `stations[${index}]`;
  const { kind, settings, chosen, entries } = station;
  const allowed: readonly string[] = settingsByKind[kind];
  const there = scenarioEntries(station);
  return [
    ...settingProblems(`${field}.settings`, kind, settings),
    ...Object.entries(entries).flatMap(([name, count]): FieldProblem[] => {
      const side = name as Side;
      const at = `${field}.entries.${side}`;
      if (!coreRoles(kind, side, settings?.switching))
        return [
          {
            field: at,
            message: `a ${kind} has no ${side} side`,
            remedy: "Name a side that stations of this kind have.",
          },
        ];
      const usual = there.filter((entry) => entry.side === side).length;
      if (usual >= count) return [];
      return [
        {
          field: at,
          message: `a ${kind} has no more than ${usual} entries of that side`,
          remedy: `Ask for ${usual} or fewer.`,
        },
      ];
    }),
    ...(chosen ?? []).flatMap((key, index): FieldProblem[] => {
      const at = `${field}.chosen[${index}]`;
      if (!allowed.includes(key))
        return [{ field: at, message: `a ${kind} has no ${key}`, remedy: "Remove it from what is chosen." }];
      if (settings?.[key] === undefined) return [];
      return [
        {
          field: at,
          message: `${key} is fixed in settings and chosen as well`,
          remedy: "Keep it in one of the two.",
        },
      ];
    }),
  ];
}

function builtProblems(field: string, built: Built, stations: Stations): FieldProblem[] {
  return [
    ...Object.entries(built.settings ?? {}).flatMap(([id, settings]) => {
      const station = stations.get(id as StationId);
      const at = `${field}.settings.${id}`;
      return station
        ? settingProblems(at, station.kind, settings)
        : absentStation(at, id as StationId, stations);
    }),
    ...cableProblems(`${field}.cables`, built.cables, stations),
  ];
}

function keptProblems(scenario: Scenario): FieldProblem[] {
  const asFound = new Set(scenario.asFound.cables.map(({ from, to }) => cableId(from, to)));
  return scenario.requirements.flatMap((want, index) =>
    want.kind === "kept"
      ? want.cables.flatMap((cable, cableIndex) =>
          asFound.has(cable)
            ? []
            : [
                {
                  field: `requirements[${index}].cables[${cableIndex}]`,
                  message: `${cable} is not there as found`,
                  remedy: "Only a cable of asFound can be kept.",
                },
              ],
        )
      : [],
  );
}

function hiddenFaultProblems(scenario: Scenario, stations: Stations): FieldProblem[] {
  return (scenario.hiddenFaults ?? []).flatMap((fault, index): FieldProblem[] => {
    const field = `hiddenFaults[${index}]`;
    if (fault.kind === "missing-link") return absentStation(`${field}.station`, fault.station, stations);
    const cable = cableIdSchema.safeParse(fault.cable);
    if (cable.success)
      return endsOfCable(cable.data).flatMap((entry) => absentEntry(`${field}.cable`, entry, stations));
    return [
      {
        field: `${field}.cable`,
        message: `${fault.cable} is no cable`,
        remedy: "Write its two entries in order, such as socket-1.a~socket-3.b.",
      },
    ];
  });
}

/** What is hidden is asked for by its place in the row; the names of the faults would give them away. */
function huntProblems({ requirements, hiddenFaults, drawnFaults }: Scenario): FieldProblem[] {
  if (hiddenFaults && drawnFaults)
    return [
      {
        field: "drawnFaults",
        message: "there are hidden faults as well",
        remedy: "Set the faults or have them drawn, one of the two.",
      },
    ];
  const count = hiddenFaults?.length ?? (drawnFaults ? faultCountOf[drawnFaults.level] : 0);
  const names = Array.from({ length: count }, (_, index) => hiddenFaultName(index));
  return requirements.flatMap((want, index) =>
    want.kind !== "fault-named" || want.faults.join() === names.join()
      ? []
      : [
          {
            field: `requirements[${index}].faults`,
            message: "they are not the faults that are hidden",
            remedy: `Write ${names.join(", ") || "no such requirement"}.`,
          },
        ],
  );
}

const unknownWants = (field: string, wants: readonly number[], { requirements }: Scenario): FieldProblem[] =>
  wants
    .filter((want) => want >= requirements.length)
    .map((want) => ({
      field,
      message: `there is no requirement ${want}`,
      remedy: `They count from 0 to ${requirements.length - 1}.`,
    }));

/**
 * What the schema of a scenario cannot say: stations without a place, names that are not there, answers that use
 * what the scenario does not offer, and an as-found circuit that the rest of the file does not know of.
 */
export function scenarioProblems(scenario: Scenario): FieldProblem[] {
  const stations = stationsById(scenario.stations.map(standing));
  const largest = stationsById(scenario.stations.map(roomy));
  const answers = [
    ...scenario.modelAnswers.map((built, index) => ({
      field: `modelAnswers[${index}]`,
      built,
      among: stations,
    })),
    ...scenario.wrongAnswers.map(({ built }, index) => ({
      field: `wrongAnswers[${index}].built`,
      built,
      among: largest,
    })),
  ];
  const hasAsFound = scenario.asFound.cables.length > 0;
  return [
    ...repeats(
      scenario.stations.map(({ id }) => id),
      (index) => `stations[${index}].id`,
      "station",
    ),
    ...scenario.stations.flatMap(stationProblems),
    ...partsProblems(scenario),
    ...planProblems(scenario.plan, stations),
    ...loadProblems(scenario.loads, stations),
    ...wantProblems("requirements", scenario.requirements, stations),
    ...keptProblems(scenario),
    ...builtProblems("asFound", scenario.asFound, stations),
    ...(scenario.asks ?? []).flatMap(({ heldBy }, index) =>
      unknownWants(`asks[${index}].heldBy`, heldBy, scenario),
    ),
    ...answers.flatMap(({ field, built, among }) => [
      ...builtProblems(field, built, among),
      ...answerProblems(field, built, scenario),
    ]),
    ...(scenario.isExistingCircuit === hasAsFound
      ? []
      : [
          {
            field: "isExistingCircuit",
            message: hasAsFound
              ? "there are cables as found, so there is an existing circuit"
              : "there is no cable as found, so there is no existing circuit",
            remedy: "Make the two agree: an existing circuit is made dead before any lead is touched.",
          },
        ]),
    ...(scenario.hints && scenario.hints.length !== hintLimit
      ? [
          {
            field: "hints",
            message: `there are ${scenario.hints.length} hints`,
            remedy: "Write three: a nudge, the rule, the place. Or none.",
          },
        ]
      : []),
    ...repeats(
      scenario.wrongAnswers.map(({ name }) => name),
      (index) => `wrongAnswers[${index}].name`,
      "the wrong answer",
    ),
    ...scenario.wrongAnswers.flatMap(({ notMet = [] }, index) =>
      unknownWants(`wrongAnswers[${index}].notMet`, notMet, scenario),
    ),
    ...hiddenFaultProblems(scenario, stations),
    ...huntProblems(scenario),
  ];
}

/** Complains of wrong answers of which nothing is stated that is wrong with them. */
export const unstatedProblems = ({ wrongAnswers }: Scenario): FieldProblem[] =>
  wrongAnswers.flatMap(({ findings, notMet = [] }, index): FieldProblem[] =>
    findings.length + notMet.length > 0
      ? []
      : [
          {
            field: `wrongAnswers[${index}]`,
            message: "nothing is wrong with it",
            remedy: "State the findings it must give, or the requirements it does not meet.",
          },
        ],
  );
