/** A few strokes of SVG in millimetres; text is escaped, numbers are rounded so that files are the same everywhere. */
const number = (value: number): string => String(Math.round(value * 100) / 100);

export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

export type Point = readonly [xMm: number, yMm: number];

export const line = (...points: Point[]): string =>
  `<polyline points="${points.map(([x, y]) => `${number(x)},${number(y)}`).join(" ")}"/>`;

export const box = (xMm: number, yMm: number, widthMm: number, heightMm: number): string =>
  `<rect x="${number(xMm)}" y="${number(yMm)}" width="${number(widthMm)}" height="${number(heightMm)}"/>`;

export const dot = (xMm: number, yMm: number): string =>
  `<circle class="dot" cx="${number(xMm)}" cy="${number(yMm)}" r="0.7"/>`;

/** A hole to drill, with the colour of its conductor at its rim. */
export const circle = (xMm: number, yMm: number, radiusMm: number, colour = "hole"): string =>
  `<circle class="rim ${colour}" cx="${number(xMm)}" cy="${number(yMm)}" r="${number(radiusMm)}"/>`;

export const text = (
  xMm: number,
  yMm: number,
  words: string,
  { sizeMm = 3, anchor = "start" }: { sizeMm?: number; anchor?: "start" | "middle" | "end" } = {},
): string =>
  `<text x="${number(xMm)}" y="${number(yMm)}" font-size="${number(sizeMm)}" text-anchor="${anchor}">${escaped(words)}</text>`;

/** A page of so many millimetres, ink on white, that prints at its true size. */
export const page = (widthMm: number, heightMm: number, title: string, body: readonly string[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(widthMm)}mm" height="${number(heightMm)}mm" viewBox="0 0 ${number(widthMm)} ${number(heightMm)}">`,
    `<title>${escaped(title)}</title>`,
    "<style>polyline,rect,path{fill:none;stroke:#23272b;stroke-width:.35}text{fill:#23272b;font-family:sans-serif}.dot{fill:#23272b;stroke:none}.cut{stroke-dasharray:1 1;stroke-width:.2}.brown{fill:#7a4a21}.blue{fill:#2f6db3}.earth{fill:#4c8a2b}.rim{fill-opacity:.35;stroke:#23272b;stroke-width:.35}.hole{fill:none}</style>",
    '<rect width="100%" height="100%" style="fill:#fff;stroke:none"/>',
    ...body,
    "</svg>",
    "",
  ].join("\n");
