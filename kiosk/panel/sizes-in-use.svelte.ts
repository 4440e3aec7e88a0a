import { getContext, setContext } from "svelte";
import type { Sizes } from "./sizes.ts";

/** The sizes of the panel the screen is on; they change with its window and with large letters. */
export class SizesInUse implements Sizes {
  readonly #now: () => Sizes;
  constructor(now: () => Sizes) {
    this.#now = now;
  }
  get mmPx(): number {
    return this.#now().mmPx;
  }
  get bodyPx(): number {
    return this.#now().bodyPx;
  }
  get captionPx(): number {
    return this.#now().captionPx;
  }
  get mainKeyPx(): number {
    return this.#now().mainKeyPx;
  }
  get keyPx(): number {
    return this.#now().keyPx;
  }
  get leastKeyPx(): number {
    return this.#now().leastKeyPx;
  }
  get isSmall(): boolean {
    return this.#now().isSmall;
  }
}

const sizes = Symbol("sizes");
export const provideSizes = (made: SizesInUse): SizesInUse => setContext(sizes, made);
export const useSizes = (): SizesInUse => getContext<SizesInUse>(sizes);
