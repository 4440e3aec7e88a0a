import type { Options } from "uplot";
import type UPlot from "uplot";
import type { HeatView, LoadFacts } from "../../shared/protocol/load-view.ts";
import { palette } from "../panel/palette.ts";

/** What the temperature of a cable is drawn from; lengths in pixels. */
export interface PlotInput {
  heat: HeatView;
  first: LoadFacts["first"];
  nowS: number;
  width: number;
  height: number;
  captionPx: number;
}

/** The pattern of each line, in pixels drawn and left out, so that none is told by its colour alone. */
export const patterns = { early: [], late: [9, 5], longLife: [3, 4], faultLimit: [14, 4, 3, 4] } as const;

const leastTopC = 180;
/** Both lines that matter are always in view. */
const topC = ({ heat }: PlotInput): number => Math.max(leastTopC, Math.max(...heat.earlyC) * 1.05);

function rule(plot: UPlot, fromX: number, fromY: number, toX: number, toY: number, dash: readonly number[]) {
  const { ctx } = plot;
  ctx.setLineDash([...dash]);
  ctx.beginPath();
  ctx.moveTo(fromX, fromY);
  ctx.lineTo(toX, toY);
  ctx.stroke();
}

/** Slanted strokes over a piece of the plot. */
function hatch(plot: UPlot, left: number, top: number, right: number, bottom: number, lean: 1 | -1): void {
  const { ctx } = plot;
  const gap = 9 * devicePixelRatio;
  const tall = bottom - top;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, Math.max(right - left, gap / 3), tall);
  ctx.clip();
  for (let x = left - tall; x < right + tall; x += gap)
    rule(plot, x, lean > 0 ? bottom : top, x + tall, lean > 0 ? top : bottom, []);
  ctx.restore();
}

function drawGround(plot: UPlot, { heat, first, nowS }: PlotInput): void {
  const { ctx } = plot;
  const { left, top, width, height } = plot.bbox;
  const y = (c: number): number => plot.valToPos(c, "y", true);
  const x = (s: number): number => plot.valToPos(s / 60, "x", true);
  ctx.save();
  ctx.lineWidth = devicePixelRatio;
  ctx.strokeStyle = palette["boxwood-edge"];
  if (heat.zone.toC > heat.zone.fromC)
    hatch(plot, left, Math.max(top, y(heat.zone.toC)), left + width, y(heat.zone.fromC), 1);
  ctx.strokeStyle = palette.quiet;
  if (first) {
    const until = first.latestS === undefined ? left + width : x(first.latestS);
    hatch(plot, x(first.earliestS), top, Math.min(until, left + width), top + height, -1);
  }
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.strokeStyle = palette.ink;
  rule(plot, left, y(heat.longLifeC), left + width, y(heat.longLifeC), patterns.longLife);
  ctx.strokeStyle = palette.danger;
  rule(plot, left, y(heat.faultLimitC), left + width, y(heat.faultLimitC), patterns.faultLimit);
  ctx.strokeStyle = palette.ink;
  rule(plot, x(nowS), top, x(nowS), top + height, []);
  ctx.restore();
}

/** The plot of a cable's temperature: both bounds, both lines, the accepted zone, when the device opens, and now. */
export function plotOptions(input: PlotInput): Options {
  const { width, height, captionPx } = input;
  const font = `${captionPx}px "Atkinson Hyperlegible"`;
  const axis = {
    font,
    stroke: palette.ink,
    grid: { stroke: palette.sheath, width: 1 },
    ticks: { stroke: palette.ink, width: 1 },
  };
  return {
    width,
    height,
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false }, y: { range: [0, topC(input)] } },
    axes: [
      { ...axis, size: captionPx * 1.6, space: captionPx * 3 },
      { ...axis, size: captionPx * 2.4, space: captionPx * 1.6 },
    ],
    series: [
      {},
      { stroke: palette.danger, width: 3, points: { show: false } },
      { stroke: palette.ink, width: 2.5, dash: [...patterns.late], points: { show: false } },
    ],
    bands: [{ series: [1, 2], fill: palette.boxwood }],
    hooks: { drawAxes: [(plot: UPlot) => drawGround(plot, input)] },
  };
}
