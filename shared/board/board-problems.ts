import type { FieldProblem } from "../reading/problem.ts";
import { repeats } from "../reading/repeats.ts";
import { settingProblems } from "./setting-problems.ts";
import type { BoardDescription, BoardStation } from "./board.schema.ts";
import { frontLetter } from "./ids.ts";
import { coreRoles } from "./station-kinds.ts";

interface Used {
  field: string;
  line: number;
}

/** Every line a board uses, with the field that uses it. */
function usedLines(board: BoardDescription): Used[] {
  const ofRoles = (field: string, lines: Partial<Record<string, number>> | undefined): Used[] =>
    Object.entries(lines ?? {}).flatMap(([role, line]) =>
      line === undefined ? [] : [{ field: `${field}.${role}`, line }],
    );
  return [
    ...board.stations.flatMap((station, index) => [
      ...station.entries.flatMap((entry, at) =>
        ofRoles(`stations[${index}].entries[${at}].lines`, entry.lines),
      ),
      ...ofRoles(`stations[${index}].front`, station.front),
    ]),
    ...ofRoles("probes", board.probes),
  ];
}

const usedCodes = (board: BoardDescription): Used[] =>
  board.stations.flatMap((station, index) =>
    station.entries.flatMap((entry, at) =>
      (entry.codeContacts ?? []).map((line, bit) => ({
        field: `stations[${index}].entries[${at}].codeContacts[${bit}]`,
        line,
      })),
    ),
  );

function lineProblems(used: Used[], count: number, what: string, ofWhat: string): FieldProblem[] {
  return [
    ...repeats(
      used.map(({ line }) => String(line)),
      (index) => used[index]?.field ?? "",
      what,
    ),
    ...used
      .filter(({ line }) => line >= count)
      .map(({ field, line }) => ({
        field,
        message: `${what} ${line} is out of range`,
        remedy: `${ofWhat}: use 0 to ${count - 1}, or make the board bigger.`,
      })),
  ];
}

function pinProblems(wiring: BoardDescription["wiring"]): FieldProblem[] {
  const pins: [string, number][] =
    wiring.kind === "direct"
      ? wiring.pins.map((pin, index): [string, number] => [`wiring.pins[${index}]`, pin])
      : Object.entries(wiring.pins).flatMap(([name, pin]): [string, number][] =>
          pin === undefined ? [] : [[`wiring.pins.${name}`, pin]],
        );
  return repeats(
    pins.map(([, pin]) => String(pin)),
    (index) => pins[index]?.[0] ?? "",
    "BCM pin",
  );
}

function entryProblems(station: BoardStation, index: number): FieldProblem[] {
  const switching = station.settings?.switching;
  return station.entries.flatMap((entry, at): FieldProblem[] => {
    const field = `stations[${index}].entries[${at}]`;
    if (entry.letter === frontLetter)
      return [
        {
          field: `${field}.letter`,
          message: `${frontLetter} is the word for a station's test face`,
          remedy: "Use a letter, such as a.",
        },
      ];
    const landings = coreRoles(station.kind, entry.side, switching);
    if (!landings)
      return [
        {
          field: `${field}.side`,
          message: `a ${station.kind} has no ${entry.side} side`,
          remedy: "Give the entry a side that stations of this kind have.",
        },
      ];
    const roles = landings.map(({ role }) => role);
    const given = Object.keys(entry.lines);
    return [
      ...given
        .filter((role) => !roles.some((one) => one === role))
        .map((role) => ({
          field: `${field}.lines.${role}`,
          message: `the ${entry.side} side of a ${station.kind} has no ${role}`,
          remedy: `Its conductor positions are ${roles.join(", ")}.`,
        })),
      ...roles
        .filter((role) => !given.includes(role))
        .map((role) => ({
          field: `${field}.lines.${role}`,
          message: "it is missing",
          remedy: `Add the number of the line that senses ${role} here.`,
        })),
    ];
  });
}

function frontProblems(station: BoardStation, index: number): FieldProblem[] {
  const roles = station.entries.flatMap(({ side }) =>
    (coreRoles(station.kind, side, station.settings?.switching) ?? []).map(({ role }) => role as string),
  );
  return Object.keys(station.front ?? {})
    .filter((role) => !roles.includes(role))
    .map((role) => ({
      field: `stations[${index}].front.${role}`,
      message: `no entry of ${station.id} has ${role}`,
      remedy: "A test face shows only what the station has.",
    }));
}

function codeProblems(board: BoardDescription): FieldProblem[] {
  const used = usedCodes(board);
  const isChain = board.wiring.kind === "chain";
  const chain = board.wiring.kind === "chain" ? board.wiring : undefined;
  const widest = Math.max(
    0,
    ...board.stations.flatMap(({ entries }) => entries.map(({ codeContacts }) => codeContacts?.length ?? 0)),
  );
  const largestCode = 2 ** widest - 1;
  const needsPins = used.length > 0 && (chain?.codeCount === undefined || chain.pins.codeIn === undefined);
  return [
    ...(needsPins
      ? [
          {
            field: "wiring",
            message: "there are code contacts and no way to read them",
            remedy: isChain
              ? "Give the chain a codeCount and pins.codeIn, or remove the codeContacts."
              : "A direct board reads no codes: remove the codeContacts.",
          },
        ]
      : lineProblems(
          used,
          chain?.codeCount ?? 0,
          "code contact",
          "The code chain's length is its codeCount",
        )),
    ...repeats(
      (board.codes ?? []).map(({ code }) => String(code)),
      (index) => `codes[${index}].code`,
      "code",
    ),
    ...(board.codes ?? []).flatMap(({ code }, index) =>
      code > largestCode
        ? [
            {
              field: `codes[${index}].code`,
              message: `code ${code} needs more code contacts than any entry has`,
              remedy: `With ${widest} contacts codes go from 1 to ${largestCode}.`,
            },
          ]
        : [],
    ),
  ];
}

function faceProblems(board: BoardDescription): FieldProblem[] {
  return board.stations.flatMap(({ face }, index) =>
    face.x + face.width > 1 + 1e-9 || face.y + face.height > 1 + 1e-9
      ? [
          {
            field: `stations[${index}].face`,
            message: "it reaches over the edge of the board",
            remedy: "x + width and y + height must not exceed 1.",
          },
        ]
      : [],
  );
}

/**
 * What the schema of a board cannot say: lines, code contacts, pins, ids and codes that are used twice or are
 * out of range, and entries that do not have the conductor positions of their kind and side.
 */
export function boardProblems(board: BoardDescription): FieldProblem[] {
  const { wiring, stations } = board;
  const lineCount = wiring.kind === "direct" ? wiring.pins.length : wiring.lineCount;
  const ofWhat =
    wiring.kind === "direct" ? "There is a line for each pin" : "The chain's length is its lineCount";
  return [
    ...pinProblems(wiring),
    ...lineProblems(usedLines(board), lineCount, "line", ofWhat),
    ...repeats(
      stations.map(({ id }) => id),
      (index) => `stations[${index}].id`,
      "station",
    ),
    ...stations.flatMap((station, index) => [
      ...repeats(
        station.entries.map(({ letter }) => letter),
        (at) => `stations[${index}].entries[${at}].letter`,
        "entry",
      ),
      ...entryProblems(station, index),
      ...frontProblems(station, index),
      ...settingProblems(`stations[${index}].settings`, station.kind, station.settings),
    ]),
    ...codeProblems(board),
    ...faceProblems(board),
  ];
}
