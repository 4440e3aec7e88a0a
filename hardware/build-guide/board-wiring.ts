import type { BoardDescription, BoardStation } from "../../shared/board/board.schema.ts";
import { usualElectrics } from "../lines/settle-time.ts";
import { enTerms } from "../../shared/rules/wording/en-terms.ts";

/** What is printed at a station: `Socket outlet 3`, `Boiler 1`. */
export function stationName({
  kind,
  label,
  settings,
}: Pick<BoardStation, "kind" | "label" | "settings">): string {
  const appliance = settings?.appliance;
  const name = (appliance === undefined ? enTerms.kinds[kind] : enTerms.appliances[appliance]).nom;
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${label}`;
}

/** A line by what it is wired to, in the words on the board. */
export interface NamedLine {
  line: number;
  /** `Socket outlet 3 b L`, `Socket outlet 3 front L`, `probe red`. */
  name: string;
}

/** A contact that plugs strap to 0 V to tell their size. */
export interface NamedCode {
  codeContact: number;
  /** `Socket outlet 3 b code 1`, the least significant first. */
  name: string;
}

/** Every line that the description gives a purpose, in the order of the lines. */
export function namedLines({ stations, probes }: BoardDescription): NamedLine[] {
  const ofStations = stations.flatMap((station) => [
    ...station.entries.flatMap(({ letter, lines }) => named(`${stationName(station)} ${letter}`, lines)),
    ...named(`${stationName(station)} front`, station.front ?? {}),
  ]);
  return [...ofStations, ...named("probe", probes ?? {})].sort((a, b) => a.line - b.line);
}

const named = (prefix: string, lines: Readonly<Record<string, number | undefined>>): NamedLine[] =>
  Object.entries(lines).flatMap(([role, line]) =>
    line === undefined ? [] : [{ line, name: `${prefix} ${role}` }],
  );

/** Every code contact, in the order of the code chain. */
export function namedCodes({ stations }: BoardDescription): NamedCode[] {
  return stations
    .flatMap((station) =>
      station.entries.flatMap(({ letter, codeContacts }) =>
        (codeContacts ?? []).map((codeContact, bit) => ({
          codeContact,
          name: `${stationName(station)} ${letter} code ${2 ** bit}`,
        })),
      ),
    )
    .sort((a, b) => a.codeContact - b.codeContact);
}

/** The highest number that is used, plus one. */
export const lineCountOf = (board: BoardDescription): number =>
  board.wiring.kind === "direct" ? board.wiring.pins.length : board.wiring.lineCount;

export const codeCountOf = ({ wiring }: BoardDescription): number =>
  wiring.kind === "chain" ? (wiring.codeCount ?? 0) : 0;

export const chipsFor = (count: number): number => Math.ceil(count / 8);

/** The pull-up of each line, in ohms. */
export const pullUpOf = ({ wiring }: BoardDescription): number =>
  (wiring.electrics ?? usualElectrics).pullUpOhm;

/** Entries of all stations: places for a cable's end. */
export const entryCountOf = ({ stations }: BoardDescription): number =>
  stations.reduce((sum, { entries }) => sum + entries.length, 0);

/** Code contacts of an entry. */
export const codePolesOf = ({ stations }: BoardDescription): number =>
  Math.max(
    0,
    ...stations.flatMap(({ entries }) => entries.map(({ codeContacts }) => codeContacts?.length ?? 0)),
  );

/** Cable leads to make where they have no codes: one for every two entries, and a fifth more. Common practice, no source. */
export const leadCountOf = (board: BoardDescription): number => Math.ceil((entryCountOf(board) / 2) * 1.2);
