/**
 * The part of the `onoff` package that the bench uses, written down here so that the types pass on a machine
 * where the optional package could not be built.
 */
declare module "onoff" {
  export class Gpio {
    constructor(gpio: number, direction: "in" | "high" | "low");
    readSync(): 0 | 1;
    writeSync(value: 0 | 1): void;
    direction(): string;
    setDirection(direction: "in" | "high" | "low"): void;
    unexport(): void;
  }
}
