import { openBoard } from "./open-board.ts";
import type { FromScanner, ToScanner } from "./scanner-messages.ts";
import { ScannerProgram } from "./scanner-program.ts";

/**
 * The scanner's process. It ends when the server that started it is gone or tells it to, and lets go of every
 * line first. An interrupt from the terminal goes to both; the server then says when to end.
 */
const nowMs = (): number => Number(process.hrtime.bigint() / 1000n) / 1000;

const after = (delayMs: number, run: () => void): (() => void) => {
  if (delayMs <= 0) {
    const turn = setImmediate(run);
    return () => clearImmediate(turn);
  }
  const timer = setTimeout(run, delayMs);
  return () => clearTimeout(timer);
};

const send = (message: FromScanner): void => {
  // A server that went away a moment ago is heard of by the end of the channel.
  if (process.connected) process.send?.(message, undefined, undefined, () => undefined);
};

const program = new ScannerProgram({ send, nowMs, after, open: openBoard });

const end = (exitCode: number): void => {
  program.close();
  process.exit(exitCode);
};

process.on("message", (message: ToScanner) => {
  program.hear(message);
  if (message.type === "close") end(0);
});
process.on("disconnect", () => end(0));
process.on("SIGTERM", () => end(0));
process.on("SIGINT", () => undefined);
process.on("uncaughtException", (error) => {
  process.stderr.write(`Spurwise scanner: ${error.stack ?? error.message}\n`);
  end(1);
});

if (process.send === undefined) {
  process.stderr.write("Spurwise scanner: the server starts this program; it does nothing by itself.\n");
  process.exitCode = 2;
}
