import { type Role, roleOf, stationOf } from "../../../shared/board/ids.ts";
import type { Core } from "../../../shared/board/station-kinds.ts";
import type { AttemptView, BoardFace, SensedCable } from "../../../shared/protocol/bench-view.ts";
import { lanesOf, middleOf, moved, type Point } from "./lanes.ts";

/** A core of a cable as it is drawn: where it runs, and whether a lead of it is there at all. */
export interface DrawnCore {
  core: Core;
  /** The terminal it begins at. */
  role: Role;
  line: Point[];
  isMissing: boolean;
  /** It ends at another terminal than it began at. */
  isCrossed: boolean;
}

export interface DrawnCable {
  id: SensedCable["id"];
  /** As its line of the table is numbered. */
  number: number;
  line: Point[];
  sheathPt: number;
  cores: DrawnCore[];
  label: Point;
}

/** The plan of a house with its cables, in points of the paper. */
export interface WiringDrawing {
  widthPt: number;
  heightPt: number;
  rooms: { x: number; y: number; width: number; height: number; name: AttemptView["scenario"]["title"] }[];
  walls: { a: Point; b: Point }[];
  cables: DrawnCable[];
  plates: { id: string; number: number; at: Point }[];
}

export const platePt = 15;
const corePt = 2;
const marginPt = 22;

/** The stations that are drawn: where the plan has a place for them, and where a cable leads. */
export function drawnStations({ scenario, cables }: AttemptView, face: BoardFace): BoardFace["stations"] {
  const placed = new Set<string>(scenario.plan.places.map(({ station }) => station));
  const wired = new Set<string>(cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]));
  return face.stations.filter(({ id }) => placed.has(id) || wired.has(id));
}

/** Moves plates that lie on one another apart, each as far as the other. */
function apart(plates: { at: Point }[]): void {
  const least = platePt + 3;
  for (let turn = 0; turn < 40; turn += 1)
    for (const [i, a] of plates.entries())
      for (const b of plates.slice(i + 1)) {
        const dx = b.at.x - a.at.x;
        const dy = b.at.y - a.at.y;
        if (Math.abs(dx) >= least || Math.abs(dy) >= least) continue;
        const isAcross = Math.abs(dx) >= Math.abs(dy);
        const push = (least - Math.abs(isAcross ? dx : dy)) / 2;
        const way = (isAcross ? dx : dy) < 0 ? -1 : 1;
        a.at = isAcross ? { ...a.at, x: a.at.x - push * way } : { ...a.at, y: a.at.y - push * way };
        b.at = isAcross ? { ...b.at, x: b.at.x + push * way } : { ...b.at, y: b.at.y + push * way };
      }
}

/** The cores of a cable by the terminals of the end it begins at. */
function coresOf({ from, conductors }: SensedCable, face: BoardFace): Omit<DrawnCore, "line">[] {
  const entry = face.stations.flatMap(({ entries }) => entries).find(({ id }) => id === from);
  return (entry?.contacts ?? []).map(({ id, role, core }) => {
    const lead = conductors.find((one) => one.from === id || one.to === id);
    const isCrossed = lead !== undefined && roleOf(lead.from) !== roleOf(lead.to);
    return { core, role, isMissing: lead === undefined, isCrossed };
  });
}

/** Draws what is wired as it was sensed, on a paper so wide and at most so high. */
export function wiringDrawing(
  view: AttemptView,
  face: BoardFace,
  widthPt: number,
  mostHeightPt: number,
): WiringDrawing {
  const { plan } = view.scenario;
  const stations = drawnStations(view, face);
  const strays = stations.filter(({ id }) => !plan.places.some(({ station }) => station === id));
  const strayPt = strays.length > 0 ? 30 : 0;
  const scale = Math.min(
    (widthPt - 2 * marginPt) / plan.width,
    (mostHeightPt - 2 * marginPt - strayPt) / plan.height,
  );
  const left = (widthPt - plan.width * scale) / 2;
  const toPt = ({ x, y }: Point): Point => ({ x: left + x * scale, y: marginPt + y * scale });
  const heightPt = plan.height * scale + 2 * marginPt + strayPt;
  const plates = stations.map(({ id }, at) => {
    const place = plan.places.find(({ station }) => station === id);
    const x = (widthPt * (strays.findIndex((one) => one.id === id) + 1)) / (strays.length + 1);
    return { id: id, number: at + 1, at: place ? toPt(place.at) : { x, y: heightPt - marginPt } };
  });
  apart(plates);
  const plateAt = new Map(plates.map(({ id, at }) => [id, at]));
  const ways = view.cables.map(({ from, to, path }) => {
    const [a, b] = [plateAt.get(stationOf(from)), plateAt.get(stationOf(to))];
    return path.length > 1 ? path.map(toPt) : [a, b].filter((point) => point !== undefined);
  });
  const lanes = lanesOf(ways, 4 * corePt + 3.5);
  return {
    widthPt,
    heightPt,
    rooms: plan.rooms.map(({ name, ...room }) => ({
      ...toPt(room),
      width: room.width * scale,
      height: room.height * scale,
      name,
    })),
    walls: plan.walls
      .filter(({ as = "wall" }) => as === "wall")
      .map(({ from, to }) => ({ a: toPt(from), b: toPt(to) })),
    plates,
    cables: view.cables.map((cable, i) => {
      const cores = coresOf(cable, face);
      const way = ways[i] ?? [];
      const lane = lanes[i] ?? 0;
      const line = moved(way, lane);
      return {
        id: cable.id,
        number: i + 1,
        line,
        sheathPt: (cores.length + 1) * corePt,
        cores: cores.map((core, at) => ({
          ...core,
          line: moved(way, lane + (at - (cores.length - 1) / 2) * corePt),
        })),
        label: middleOf(line),
      };
    }),
  };
}

/** Cables go by letters on the drawing and in the table, stations by numbers. */
export function cableMark(number: number): string {
  const at = number - 1;
  const letter = String.fromCharCode(97 + (at % 26));
  return at < 26 ? letter : `${letter}${Math.floor(at / 26)}`;
}
