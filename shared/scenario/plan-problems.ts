import { byId, type StationId } from "../board/ids.ts";
import type { FieldProblem } from "../reading/problem.ts";
import { nearestName } from "../reading/nearest-name.ts";
import { repeats } from "../reading/repeats.ts";
import { absentStation, type Stations } from "../wiring/absent-names.ts";
import { routes } from "./plan-route.ts";
import type { Plan } from "./scenario.schema.ts";

const isInside = (plan: Plan, x: number, y: number): boolean => x <= plan.width && y <= plan.height;

function wallProblems(plan: Plan): FieldProblem[] {
  const classes = Object.keys(plan.routeClasses);
  return plan.walls.flatMap(({ from, to, routeClass }, index): FieldProblem[] => {
    const field = `plan.walls[${index}]`;
    const meant = nearestName(routeClass, classes);
    return [
      ...(classes.includes(routeClass)
        ? []
        : [
            {
              field: `${field}.routeClass`,
              message: `there is no route class ${routeClass}`,
              remedy: meant ? `Did you mean ${meant}?` : `Use one of: ${classes.join(", ")}.`,
            },
          ]),
      ...(from.x === to.x && from.y === to.y
        ? [{ field, message: "it has no length", remedy: "Give it two ends, or remove it." }]
        : []),
      ...([from, to].some(({ x, y }) => !isInside(plan, x, y))
        ? [{ field, message: "it reaches beyond the plan", remedy: "Keep it within width and height." }]
        : []),
    ];
  });
}

function placeProblems(plan: Plan, stations: Stations): FieldProblem[] {
  const placed = new Set(plan.places.map(({ station }) => station));
  return [
    ...repeats(
      plan.places.map(({ station }) => station),
      (index) => `plan.places[${index}].station`,
      "the place of",
    ),
    ...repeats(
      plan.places.map(({ at }) => `${at.x}, ${at.y}`),
      (index) => `plan.places[${index}].at`,
      "a station at",
    ),
    ...plan.places.flatMap(({ station, at }, index) => [
      ...absentStation(`plan.places[${index}].station`, station, stations),
      ...(isInside(plan, at.x, at.y)
        ? []
        : [
            {
              field: `plan.places[${index}].at`,
              message: "it lies outside the plan",
              remedy: "Keep it within width and height.",
            },
          ]),
    ]),
    ...[...stations.keys()]
      .filter((id) => !placed.has(id))
      .map((id) => ({
        field: "plan.places",
        message: `${id} has no place`,
        remedy: "Say where it is, so that cables to it have a length.",
      })),
  ];
}

function overrideProblems(plan: Plan, stations: Stations): FieldProblem[] {
  const overrides = plan.overrides ?? [];
  return [
    ...repeats(
      overrides.map(({ a, b }) => [a, b].toSorted(byId).join(" and ")),
      (index) => `plan.overrides[${index}]`,
      "the pair",
    ),
    ...overrides.flatMap(({ a, b, ...stated }, index): FieldProblem[] => [
      ...absentStation(`plan.overrides[${index}].a`, a, stations),
      ...absentStation(`plan.overrides[${index}].b`, b, stations),
      ...(Object.keys(stated).length > 0
        ? []
        : [
            {
              field: `plan.overrides[${index}]`,
              message: "it changes nothing",
              remedy: "State a length or a way of running, or remove it.",
            },
          ]),
    ]),
  ];
}

function unreachable(plan: Plan): FieldProblem[] {
  const between = routes(plan);
  const [first, ...rest] = plan.places.map(({ station }) => station);
  if (!first) return [];
  return rest
    .filter((station: StationId) => !between(first, station))
    .map((station) => ({
      field: "plan.walls",
      message: `no wall leads from ${first} to ${station}`,
      remedy: "Add walls, floors or ceilings that join them, so that a cable has a way.",
    }));
}

/** What the schema of a plan cannot say: names that are not there, and stations that no cable could reach. */
export function planProblems(plan: Plan, stations: Stations): FieldProblem[] {
  const problems = [
    ...wallProblems(plan),
    ...placeProblems(plan, stations),
    ...overrideProblems(plan, stations),
    ...plan.rooms.flatMap(({ x, y, width, height }, index) =>
      isInside(plan, x + width, y + height)
        ? []
        : [
            {
              field: `plan.rooms[${index}]`,
              message: "it reaches beyond the plan",
              remedy: "Keep it within width and height.",
            },
          ],
    ),
  ];
  return problems.length > 0 ? problems : unreachable(plan);
}
