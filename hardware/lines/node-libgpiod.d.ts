/**
 * The part of the `node-libgpiod` package that the bench uses, written down here so that the types pass on a machine
 * where the optional package could not be built.
 */
declare module "node-libgpiod" {
  export class Chip {
    /** By path, as `/dev/gpiochip0`. */
    constructor(device: string);
    readonly label: string;
    readonly numberOfLines: number;
  }
  export class Line {
    constructor(chip: Chip, offset: number);
    requestInputMode(consumer: string): void;
    requestOutputMode(consumer: string, value: 0 | 1): void;
    getValue(): 0 | 1;
    setValue(value: 0 | 1): void;
    release(): void;
  }
  /** Lines of one chip; those that were requested can be turned round in it. */
  export class Bulk {
    constructor(chip: Chip, offsets: number[]);
    setDirectionInput(): void;
    setDirectionOutput(values: (0 | 1)[]): void;
  }
}
