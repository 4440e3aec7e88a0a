/** When a device opens at a constant current, from cold: never before the one, by the other at the latest. */
export interface OpeningTime {
  /** Infinity where it must hold. */
  earliestS: number;
  /** Infinity where nothing says that it must ever open. */
  latestS: number;
}

/** The band of a device between the gates of its product standard. */
export interface DeviceBand {
  ratingA: number;
  /** Up to here the device must hold. */
  holdsToA: number;
  /** From here on it opens at once, without thermal delay; undefined for a fuse. */
  instantaneousFromA?: number;
  /** True where its standard gives no gate for it and the band is our reading of what is tabulated. */
  isEstimate: boolean;
  opening(currentA: number): OpeningTime;
}
