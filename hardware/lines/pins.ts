/** How a pin is opened. Never `out`: it would drive 0 for a moment. */
export type PinDirection = "in" | "high" | "low";

export interface PinRequest<Name extends string> {
  /** What the pin is for; errors name it. */
  name: Name;
  bcm: number;
  direction: PinDirection;
}

/** One open pin; its value file stays open. Every call is synchronous and at most one system call. */
export interface OpenPin {
  /** @throws LinesError `pin-failed` */
  read(): 0 | 1;
  /** @throws LinesError `pin-failed` */
  write(value: 0 | 1): void;
  /** @throws LinesError `pin-failed` */
  setDirection(direction: PinDirection): void;
  /** Gives the pin back to the kernel. Never throws: what cannot be given back is left as it is. */
  close(): void;
}
