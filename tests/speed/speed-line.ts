/** One line of the speed table. */
export interface SpeedLine {
  what: string;
  reached: string;
  target: string;
  ok: boolean;
}

/** The value below which a share of the samples lies; 0.5 is the median. */
export const quantile = (samples: readonly number[], share: number): number => {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

/** Milliseconds a call takes. */
export const timedMs = (call: () => void): number => {
  const start = performance.now();
  call();
  return performance.now() - start;
};

export const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`;
