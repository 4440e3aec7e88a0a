import type { BoardDescription, BoardStation } from "../../shared/board/board.schema.ts";
import type { Role } from "../../shared/board/ids.ts";
import { stationName } from "./board-wiring.ts";
import { box, circle, page, text } from "./svg.ts";

/** A panel that a bench holds and two people carry. */
const panelSize = {
  chain: { widthMm: 900, heightMm: 600 },
  direct: { widthMm: 420, heightMm: 297 },
} as const;
const holeMm = 6;
const colourOf: Partial<Record<Role, string>> = { L: "brown", N: "blue", E: "earth" };

/** The front panel at its true size: every station, and every hole with its contact, to print and to drill by. */
export function panel(board: BoardDescription): string {
  const { widthMm, heightMm } = panelSize[board.wiring.kind];
  return page(widthMm, heightMm, `${board.name}: front panel`, [
    text(
      6,
      8,
      `${board.name}: front panel, ${widthMm} x ${heightMm} mm. Print at 100 %, in tiles. Holes ${holeMm} mm.`,
      {
        sizeMm: 4,
      },
    ),
    ...board.stations.flatMap((station) => stationOn(station, widthMm, heightMm)),
  ]);
}

function stationOn(station: BoardStation, widthMm: number, heightMm: number): string[] {
  const { x, y, width, height } = station.face;
  const [leftMm, topMm, wideMm, highMm] = [x * widthMm, y * heightMm, width * widthMm, height * heightMm];
  const columns = [
    ...station.entries.map(({ letter, lines }) => ({ letter, lines })),
    ...(station.front === undefined ? [] : [{ letter: "front", lines: station.front }]),
  ];
  const headMm = Math.min(10, highMm / 4);
  return [
    box(leftMm, topMm, wideMm, highMm),
    text(leftMm + wideMm / 2, topMm + headMm * 0.6, stationName(station), { sizeMm: 3.5, anchor: "middle" }),
    ...columns.flatMap(({ letter, lines }, column) => {
      const roles = Object.keys(lines) as Role[];
      const atX = leftMm + (wideMm * (column + 0.5)) / columns.length;
      return roles.flatMap((role, row) => {
        const atY = topMm + headMm + ((highMm - headMm) * (row + 0.4)) / roles.length;
        return [
          circle(atX, atY, holeMm / 2, colourOf[role]),
          text(atX, atY + holeMm / 2 + 3, `${letter} ${role}`, { sizeMm: 2.5, anchor: "middle" }),
        ];
      });
    }),
  ];
}
