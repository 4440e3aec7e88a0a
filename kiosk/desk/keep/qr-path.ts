import encodeQR from "qr";

/** White around a code, in its modules (ISO/IEC 18004, quiet zone). */
const quietModules = 4;

/** The dark modules of a QR code (ISO/IEC 18004) as an SVG path, in a square of `size` modules with the white around it. */
export function qrPath(text: string): { path: string; size: number } {
  const rows = encodeQR(text, "raw", { ecc: "medium", border: quietModules });
  const path = rows
    .flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join("");
  return { path, size: rows.length };
}
