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

/**
 * Milliseconds of processor time a call takes, the least of three. For what is all reckoning: what else the machine does
 * meanwhile is none of it.
 */
export function processorMs(call: () => void): number {
  const times = [1, 2, 3].map(() => {
    const before = process.cpuUsage();
    call();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return Math.min(...times);
}

export const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`;
