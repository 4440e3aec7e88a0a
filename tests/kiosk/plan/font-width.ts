import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { inflateSync } from "node:zlib";
import type { Measure } from "../../../kiosk/plan/plan-input.ts";

const fileOf = (part: "latin" | "latin-ext", isBold: boolean): string =>
  createRequire(import.meta.url).resolve(
    `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${part}-${isBold ? 700 : 400}-normal.woff`,
  );

/** The tables of a font in the WOFF file format (W3C, WOFF File Format 1.0, sections 3 to 5). */
const tablesOf = (path: string): Map<string, DataView> => {
  const bytes = readFileSync(path);
  const tables = new Map<string, DataView>();
  for (let i = 0; i < bytes.readUInt16BE(12); i += 1) {
    const at = 44 + i * 20;
    const [offset, packed, whole] = [4, 8, 12].map((far) => bytes.readUInt32BE(at + far)) as [
      number,
      number,
      number,
    ];
    const raw = bytes.subarray(offset, offset + packed);
    const table = packed < whole ? inflateSync(raw) : raw;
    tables.set(
      bytes.toString("latin1", at, at + 4),
      new DataView(table.buffer, table.byteOffset, table.byteLength),
    );
  }
  return tables;
};

/** Advance width of each character as a part of the font size (OpenType: cmap format 4, hmtx, hhea, head). */
const advancesOf = (path: string): Map<string, number> => {
  const tables = tablesOf(path);
  const table = (name: string): DataView => {
    const found = tables.get(name);
    if (!found) throw new Error(`${path} has no ${name}`);
    return found;
  };
  const [cmap, hmtx] = [table("cmap"), table("hmtx")];
  const unitsPerEm = table("head").getUint16(18);
  const metricCount = table("hhea").getUint16(34);
  const advances = new Map<string, number>();
  for (let i = 0; i < cmap.getUint16(2); i += 1) {
    const at = cmap.getUint32(4 + i * 8 + 4);
    if (cmap.getUint16(at) !== 4) continue;
    const segX2 = cmap.getUint16(at + 6);
    for (let seg = 0; seg < segX2; seg += 2) {
      const end = cmap.getUint16(at + 14 + seg);
      const start = cmap.getUint16(at + 16 + segX2 + seg);
      const delta = cmap.getUint16(at + 16 + 2 * segX2 + seg);
      const rangeAt = at + 16 + 3 * segX2 + seg;
      const range = cmap.getUint16(rangeAt);
      for (let code = start; code <= end && code !== 0xffff; code += 1) {
        const direct = range === 0 ? code : cmap.getUint16(rangeAt + range + 2 * (code - start));
        const glyph = direct === 0 && range !== 0 ? 0 : (direct + delta) % 65536;
        if (glyph === 0) continue;
        const metric = Math.min(glyph, metricCount - 1);
        advances.set(String.fromCharCode(code), hmtx.getUint16(metric * 4) / unitsPerEm);
      }
    }
  }
  return advances;
};

const known = new Map<boolean, Map<string, number>>();
const weightOf = (isBold: boolean): Map<string, number> => {
  const found = known.get(isBold);
  if (found) return found;
  const made = new Map([...advancesOf(fileOf("latin-ext", isBold)), ...advancesOf(fileOf("latin", isBold))]);
  known.set(isBold, made);
  return made;
};

/** How wide a text is, from the kiosk's own font files; a sign that is in none counts as a wide one. */
export const fontWidth: Measure = (text, fontPx, isBold) => {
  const advances = weightOf(isBold);
  return [...text].reduce((sum, sign) => sum + (advances.get(sign) ?? 1), 0) * fontPx;
};
