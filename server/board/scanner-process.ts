import { fork } from "node:child_process";
import type { FromScanner } from "../../hardware/scan/scanner-messages.ts";
import type { StartScanner } from "./scanner-channel.ts";

/**
 * Runs the scanner's program in a process of its own, because the GPIO library can take its process down with it.
 *
 * @param childPath the program
 */
export const scannerProcess =
  (childPath: string): StartScanner =>
  ({ hear, note }) => {
    // The child's own process only: it gets none of the flags this one was started with.
    const child = fork(childPath, [], { execArgv: [], serialization: "json", stdio: "inherit" });
    child.on("message", (message) => hear(message as FromScanner));
    child.on("error", (error) => note(`scanner: ${error.message}`));
    return {
      get isOpen() {
        return child.connected;
      },
      // A child that died a moment ago is heard of by its end; the message is then lost with it.
      send: (message) => void (child.connected && child.send(message, () => undefined)),
      close: () => {
        if (child.connected) child.send({ type: "close" }, () => undefined);
        else child.kill("SIGTERM");
      },
      kill: () => void child.kill("SIGKILL"),
      ended: new Promise((resolve) => {
        child.once("exit", (code, signal) => resolve(`${signal ?? code ?? "unknown"}`));
        // A process that could not be started at all has no exit.
        child.once("error", () => child.pid === undefined && resolve("not started"));
      }),
    };
  };
