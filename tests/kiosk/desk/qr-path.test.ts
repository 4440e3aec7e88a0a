import { describe, expect, it } from "vitest";
import decodeQR from "qr/decode.js";
import { qrPath } from "../../../kiosk/desk/keep/qr-path.ts";

const scale = 4;

/** The path as a camera would see it: every module some pixels wide. */
function imageOf({ path, size }: ReturnType<typeof qrPath>) {
  const width = size * scale;
  const data = new Uint8Array(width * width * 4).fill(255);
  for (const [, x = "", y = ""] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let row = 0; row < scale; row += 1)
      for (let column = 0; column < scale; column += 1)
        data.fill(
          0,
          ((Number(y) * scale + row) * width + Number(x) * scale + column) * 4,
          ((Number(y) * scale + row) * width + Number(x) * scale + column) * 4 + 3,
        );
  return { width, height: width, data };
}

describe("a QR code that is drawn", () => {
  it.each([
    "7KQ2-MNP9-XRWA",
    "http://192.168.10.24:4711/desk/",
    "https://bench-3.workshop.example.org:4711/desk/",
  ])("reads as %s, with four modules of white around it (ISO/IEC 18004)", (text) => {
    const drawn = qrPath(text);
    expect(decodeQR(imageOf(drawn))).toBe(text);
    const cells = [...drawn.path.matchAll(/M(\d+) (\d+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    expect(Math.min(...cells.flat())).toBe(4);
    expect(Math.max(...cells.flat())).toBe(drawn.size - 5);
  });
});
