import type { FromScanner, ToScanner } from "../../hardware/scan/scanner-messages.ts";

/** The line to a scanner that runs. What is sent while it is not open is lost. */
export interface ScannerChannel {
  readonly isOpen: boolean;
  send(message: ToScanner): void;
  /** Asks it to let go of the board and end. */
  close(): void;
  /** Ends it at once, as where it hangs. */
  kill(): void;
  /** Settled once it has ended, with how. */
  readonly ended: Promise<string>;
}

/** Starts a scanner: what it says is given to `hear`, what goes wrong with it to `note` as a sentence. */
export type StartScanner = (heard: {
  hear: (message: FromScanner) => void;
  note: (sentence: string) => void;
}) => ScannerChannel;
