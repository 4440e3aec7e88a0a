import { RateBucket } from "./rate-bucket.ts";

/** So many addresses are kept in mind; the one that was used longest ago is forgotten first. */
const mostKept = 2000;

/** A bucket for each address: whoever opens more links gets no more through. */
export class RateByAddress {
  readonly #make: () => RateBucket;
  readonly #buckets = new Map<string, RateBucket>();

  constructor(burst: number, perSecond: number, nowMs: () => number) {
    this.#make = () => new RateBucket(burst, perSecond, nowMs);
  }

  /** True where one more from this address is let through. */
  take(address: string): boolean {
    const bucket = this.#buckets.get(address) ?? this.#make();
    // Keeps the map in the order of use.
    this.#buckets.delete(address);
    this.#buckets.set(address, bucket);
    const [oldest] = this.#buckets.keys();
    if (this.#buckets.size > mostKept && oldest !== undefined) this.#buckets.delete(oldest);
    return bucket.take();
  }
}
