import { fork } from "node:child_process";
import type { FromScanner } from "../../hardware/scan/scanner-messages.ts";
import type { StartScanner } from "./scanner-channel.ts";

/**
 * The child's own: it needs some 5 MB of heap (also for 512 lines), of which Node would take three times as much before it
 * tidies up. Its time goes into the calls to the lines; a compiler that makes the rest quicker costs 4 MB and is not
 * noticed (`npm run speed -- contact`).
 */
const leanFlags = ["--max-semi-space-size=1", "--max-old-space-size=8", "--v8-pool-size=1", "--no-opt"];

/**
 * Runs the scanner's program in a process of its own, because the GPIO library can take its process down with it.
 *
 * @param childPath the program
 */
export const scannerProcess =
  (childPath: string): StartScanner =>
  ({ hear, note }) => {
    const child = fork(childPath, [], { execArgv: leanFlags, serialization: "json", stdio: "inherit" });
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
