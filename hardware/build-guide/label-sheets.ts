import type { BoardDescription, CableCode } from "../../shared/board/board.schema.ts";
import { codePolesOf, stationName } from "./board-wiring.ts";
import { leadSet } from "./lead-set.ts";
import { box, line, page, text } from "./svg.ts";

const sheet = { widthMm: 210, heightMm: 297, marginMm: 12 } as const;
/** A flag folds in the middle round the wire: both halves say the same. */
const flag = { widthMm: 93, heightMm: 16, columns: 2, rows: 16 } as const;
const plate = { widthMm: 62, heightMm: 34, columns: 3, rows: 7 } as const;

export const coreName = {
  brown: "brown",
  blue: "blue",
  earth: "green-and-yellow",
  black: "black",
  grey: "grey",
} as const;

/** Sheets of flags for both ends of every lead, A4, to print at full size. */
export function leadLabelSheets(board: BoardDescription): string[] {
  const leads = leadSet(board).flatMap(({ code, quantity }) =>
    Array.from({ length: quantity }, (_, index) =>
      code === undefined ? plainLead(index + 1) : codedLead(index + 1, code, codePolesOf(board)),
    ),
  );
  const flags = leads.flatMap((lead) => [lead, lead]);
  return pages(flags, flag.columns * flag.rows).map((onPage) =>
    page(sheet.widthMm, sheet.heightMm, `${board.name}: lead labels`, [
      text(
        sheet.marginMm,
        8,
        `${board.name}: lead labels. Print at 100 %. Fold on the broken line round the wire.`,
      ),
      ...onPage.flatMap(({ head, cores, code }, index) => {
        const [xMm, yMm] = cornerOf(index, flag);
        const half = flag.widthMm / 2;
        return [
          box(xMm, yMm, flag.widthMm, flag.heightMm),
          `<g class="cut">${line([xMm + half, yMm], [xMm + half, yMm + flag.heightMm])}</g>`,
          ...[xMm + half / 2, xMm + half * 1.5].flatMap((centreMm) => [
            text(centreMm, yMm + 6, head, { sizeMm: 4, anchor: "middle" }),
            text(centreMm, yMm + 10, cores, { sizeMm: 2.2, anchor: "middle" }),
            text(centreMm, yMm + 14, code, { sizeMm: 2.2, anchor: "middle" }),
          ]),
        ];
      }),
    ]),
  );
}

/** Which code contacts a plug straps to 0 V, the least significant first: `1 strap, 2 open, 4 strap`. */
export const strapsOf = (code: number, contactCount: number): string =>
  Array.from(
    { length: contactCount },
    (_, bit) => `${2 ** bit} ${(code >> bit) & 1 ? "strap" : "open"}`,
  ).join(", ");

interface LeadLabel {
  head: string;
  cores: string;
  code: string;
}

const plainLead = (number: number): LeadLabel => ({
  head: `Lead ${number}`,
  cores: "L brown, N blue",
  code: "E green-and-yellow",
});

const codedLead = (number: number, { code, csaMm2, cores }: CableCode, contactCount: number): LeadLabel => ({
  head: `${csaMm2} mm² no. ${number}`,
  cores: cores.map((core) => coreName[core]).join(", "),
  code: `code ${code}: ${strapsOf(code, contactCount)}`,
});

/** Sheets of plates for the face of the board: each station's name, and the letters of its entries. */
export function stationLabelSheets(board: BoardDescription): string[] {
  return pages(board.stations, plate.columns * plate.rows).map((onPage) =>
    page(sheet.widthMm, sheet.heightMm, `${board.name}: station labels`, [
      text(sheet.marginMm, 8, `${board.name}: station labels. Print at 100 %.`),
      ...onPage.flatMap((station, index) => {
        const { entries, front } = station;
        const [xMm, yMm] = cornerOf(index, plate);
        return [
          box(xMm, yMm, plate.widthMm, plate.heightMm),
          text(xMm + 3, yMm + 7, stationName(station), { sizeMm: 4.5 }),
          ...entries.map(({ letter, side, lines }, row) =>
            text(xMm + 3, yMm + 13 + row * 4, `${letter}  ${side}: ${Object.keys(lines).join(" ")}`),
          ),
          ...(front === undefined
            ? []
            : [text(xMm + 3, yMm + 13 + entries.length * 4, `front: ${Object.keys(front).join(" ")}`)]),
        ];
      }),
    ]),
  );
}

function cornerOf(
  index: number,
  { widthMm, heightMm, columns }: { widthMm: number; heightMm: number; columns: number },
): [number, number] {
  return [
    sheet.marginMm + (index % columns) * widthMm,
    sheet.marginMm + Math.floor(index / columns) * heightMm,
  ];
}

const pages = <Item>(items: readonly Item[], onPage: number): Item[][] =>
  Array.from({ length: Math.ceil(items.length / onPage) }, (_, index) =>
    items.slice(index * onPage, (index + 1) * onPage),
  );
