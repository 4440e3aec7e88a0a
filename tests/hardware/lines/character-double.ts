import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import type { CharacterChip, CharacterDriver } from "../../../hardware/lines/character-pins.ts";
import type { GpioAccess } from "../../../hardware/lines/open-pins.ts";
import type { BoardBehindPins } from "./board-behind-pins.ts";

type Level = 0 | 1;
interface DoubledChip {
  label: string;
  pinCount: number;
}

const failed = (code: string): Error => Object.assign(new Error(code), { code });

/**
 * The kernel's character device as the library shows it: one holder a pin, a pin is an input or driven, what was let
 * go is driven by nobody, and errors come by the kernel's names.
 */
export class CharacterDouble {
  readonly #folder = mkdtempSync(join(tmpdir(), "character-device-"));
  readonly #chips: Readonly<Record<string, DoubledChip>>;
  readonly #board: BoardBehindPins;
  /** Pins held now, by this program or another, each with what drives it. */
  readonly held = new Map<number, Level | "in" | "elsewhere">();
  /** Paths that may not be opened. */
  readonly forbidden = new Set<string>();

  constructor(board: BoardBehindPins, chips: Readonly<Record<string, DoubledChip>>) {
    this.#board = board;
    this.#chips = chips;
    for (const name of [...Object.keys(chips), "null"]) writeFileSync(join(this.#folder, name), "");
  }

  /** A machine whose kernel has no sysfs pins and this character device. */
  get access(): GpioAccess {
    return {
      sysfsRoot: join(this.#folder, "no-sysfs"),
      deviceFolder: this.#folder,
      loadCharacterDriver: () => Promise.resolve(this.driver),
    };
  }

  get driver(): CharacterDriver {
    const [chips, forbidden, hold, letGo, isHeld, board] = [
      this.#chips,
      this.forbidden,
      this.#hold.bind(this),
      this.#letGo.bind(this),
      (bcm: number) => this.held.has(bcm),
      this.#board,
    ];
    const labels = new WeakMap<CharacterChip, string>();
    const isHeader = (chip: CharacterChip): boolean => labels.get(chip)?.startsWith("pinctrl-") === true;
    return {
      Chip: class {
        readonly label: string;
        readonly numberOfLines: number;
        constructor(device: string) {
          const chip = chips[basename(device)];
          if (chip === undefined) throw failed("ENOENT");
          if (forbidden.has(basename(device))) throw failed("EACCES");
          this.label = chip.label;
          this.numberOfLines = chip.pinCount;
          labels.set(this, chip.label);
        }
      },
      Line: class {
        constructor(
          readonly chip: CharacterChip,
          readonly offset: number,
        ) {
          if (offset >= chip.numberOfLines || !isHeader(chip)) throw failed("EINVAL");
        }
        requestInputMode(): void {
          hold(this.offset, "in");
        }
        requestOutputMode(_consumer: string, value: Level): void {
          hold(this.offset, value);
        }
        getValue(): Level {
          if (!isHeld(this.offset)) throw failed("EPERM");
          return board.levelAt(this.offset);
        }
        setValue(value: Level): void {
          letGo(this.offset);
          hold(this.offset, value);
        }
        release(): void {
          letGo(this.offset);
          board.drive(this.offset, undefined);
        }
      },
      Bulk: class {
        readonly #offsets: number[];
        constructor(_chip: CharacterChip, offsets: number[]) {
          this.#offsets = offsets;
        }
        setDirectionInput(): void {
          for (const bcm of this.#offsets) {
            letGo(bcm);
            hold(bcm, "in");
          }
        }
        setDirectionOutput(values: Level[]): void {
          this.#offsets.forEach((bcm, at) => {
            letGo(bcm);
            hold(bcm, values[at] ?? 0);
          });
        }
      },
    };
  }

  remove(): void {
    rmSync(this.#folder, { recursive: true });
  }

  #hold(bcm: number, as: Level | "in"): void {
    if (this.held.has(bcm)) throw failed("EBUSY");
    this.held.set(bcm, as);
    this.#board.drive(bcm, as === "in" ? undefined : as);
  }

  #letGo(bcm: number): void {
    if (this.held.get(bcm) === "elsewhere") throw failed("EPERM");
    this.held.delete(bcm);
  }
}
