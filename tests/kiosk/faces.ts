import { contactId, entryId, frontId, stationId } from "../../shared/board/ids.ts";
import { corePlaces, type Side, type StationKind } from "../../shared/board/station-kinds.ts";
import type { BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";

interface StationRow {
  id: string;
  kind: StationKind;
  label: string;
  /** Sides of its entries, in order; letters are given from a on. */
  sides: Side[];
  at: [x: number, y: number, width: number, height: number];
  gangs?: 1 | 2;
  appliance?: FaceStation["appliance"];
  hasFront?: boolean;
}

const stationFrom = ({ id, kind, label, sides, at, gangs, appliance, hasFront }: StationRow): FaceStation => {
  const [x, y, width, height] = at;
  return {
    id: stationId(id),
    kind,
    label,
    ...(gangs ? { gangs } : {}),
    ...(appliance ? { appliance } : {}),
    face: { x, y, width, height },
    entries: sides.map((side, i) => {
      const letter = "abcdef"[i] ?? "z";
      const entry = entryId(id, letter);
      return {
        id: entry,
        letter,
        side,
        contacts: (corePlaces(kind, side) ?? []).map(({ role, core }) => ({
          id: contactId(entry, role),
          role,
          core,
        })),
      };
    }),
    front: hasFront ? (["L", "N", "E"] as const).map((role) => ({ id: frontId(id, role), role })) : [],
  };
};

const feeds = (count: number): Side[] => Array.from({ length: count }, () => "feed");
const twoSided: Side[] = ["supply", "supply", "load", "load"];

export const smallFace: BoardFace = {
  id: "small",
  name: "Small board",
  isSimulated: true,
  hasCodes: false,
  hasProbes: false,
  stations: [
    { id: "way-1", kind: "way", label: "Way 1", sides: feeds(2), at: [0.04, 0.5, 0.22, 0.42] },
    { id: "socket-1", kind: "socket-outlet", label: "1", sides: feeds(3), at: [0.3, 0.08, 0.22, 0.42] },
    {
      id: "socket-2",
      kind: "socket-outlet",
      label: "2",
      sides: feeds(2),
      at: [0.7, 0.08, 0.2, 0.42],
      gangs: 2,
    },
    { id: "socket-3", kind: "socket-outlet", label: "3", sides: feeds(1), at: [0.55, 0.54, 0.16, 0.38] },
  ].map((row) => stationFrom(row as StationRow)),
};

export const workshopFace: BoardFace = {
  id: "workshop",
  name: "Workshop board",
  isSimulated: true,
  hasCodes: false,
  hasProbes: true,
  stations: (
    [
      { id: "way-1", kind: "way", label: "Way 1", sides: feeds(4), at: [0.02, 0.03, 0.15, 0.26] },
      { id: "way-2", kind: "way", label: "Way 2", sides: feeds(3), at: [0.02, 0.35, 0.15, 0.26] },
      { id: "way-3", kind: "way", label: "Way 3", sides: feeds(3), at: [0.02, 0.67, 0.15, 0.24] },
      ...[1, 2, 3, 4, 5, 6].map((n): StationRow => ({
        id: `socket-${n}`,
        kind: "socket-outlet",
        label: String(n),
        sides: feeds(n < 3 ? 4 : 3),
        at: [0.19 + ((n - 1) % 3) * 0.135, n < 4 ? 0.03 : 0.35, 0.12, 0.26],
        gangs: n < 5 ? 2 : 1,
        hasFront: true,
      })),
      { id: "fcu-1", kind: "fcu", label: "FCU 1", sides: twoSided, at: [0.6, 0.03, 0.13, 0.26] },
      { id: "fcu-2", kind: "fcu", label: "FCU 2", sides: twoSided, at: [0.6, 0.35, 0.13, 0.26] },
      { id: "box-1", kind: "junction-box", label: "Box 1", sides: feeds(4), at: [0.19, 0.67, 0.12, 0.24] },
      {
        id: "rose-1",
        kind: "ceiling-rose",
        label: "R1",
        sides: ["feed", "feed", "switch"],
        at: [0.325, 0.67, 0.1, 0.24],
      },
      {
        id: "rose-2",
        kind: "ceiling-rose",
        label: "R2",
        sides: ["feed", "feed", "switch"],
        at: [0.44, 0.67, 0.1, 0.24],
      },
      {
        id: "switch-1",
        kind: "plate-switch",
        label: "S1",
        sides: ["switch"],
        at: [0.555, 0.67, 0.085, 0.24],
      },
      { id: "switch-2", kind: "plate-switch", label: "S2", sides: ["switch"], at: [0.65, 0.67, 0.085, 0.24] },
      { id: "light-1", kind: "luminaire", label: "W1", sides: feeds(2), at: [0.745, 0.67, 0.085, 0.24] },
      { id: "light-2", kind: "luminaire", label: "W2", sides: feeds(2), at: [0.84, 0.67, 0.085, 0.24] },
      {
        id: "control-1",
        kind: "cooker-control",
        label: "CC",
        sides: ["supply", "load"],
        at: [0.745, 0.03, 0.11, 0.26],
      },
      {
        id: "cooker-1",
        kind: "appliance",
        label: "Cooker",
        sides: feeds(1),
        at: [0.87, 0.03, 0.12, 0.26],
        appliance: "cooker",
      },
      {
        id: "boiler-1",
        kind: "appliance",
        label: "Boiler",
        sides: feeds(1),
        at: [0.745, 0.35, 0.11, 0.26],
        appliance: "boiler",
      },
      {
        id: "shower-1",
        kind: "appliance",
        label: "Shower",
        sides: feeds(1),
        at: [0.87, 0.35, 0.12, 0.26],
        appliance: "shower",
      },
    ] satisfies StationRow[]
  ).map(stationFrom),
};
