// What the hardened service runs in the boot check: the project's own chain maker, driver package and watchdog, in
// a server and a child as the bench has them, and no more.
import { fork } from "node:child_process";
import { existsSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { openChainLines } from "../hardware/lines/chain-lines.js";
import { systemdWatchdog } from "../hardware/scan/systemd-watchdog.js";

const codeOf = (action) => {
  try {
    action();
    return "done";
  } catch (error) {
    return error.code;
  }
};

if (process.argv[2] === "scanner") {
  const pins = { shiftClock: 11, dataOut: 10, latch: 8, load: 25, dataIn: 9, outputEnable: 24 };
  const lines = await openChainLines({ pins, lineCount: 24, codeCount: 0 });
  // Every line is left pulled, so that letting go can be seen.
  const turn = setInterval(() => {
    lines.exchange(new Uint8Array(24).fill(1));
    process.send("alive");
  }, 200);
  process.on("message", () => clearInterval(turn));
  process.on("disconnect", () => process.exit());
} else {
  const scanner = fork(process.argv[1], ["scanner"]);
  const watchdog = systemdWatchdog(process.env, () => performance.now());
  let isReady = false;
  scanner.on("message", () => {
    isReady = true;
    watchdog.alive();
  });
  const facts = () => ({
    isReady,
    uid: process.getuid(),
    writesData: codeOf(() => writeFileSync(`${process.env.SPURWISE_DATA}/log`, "x")),
    writesProgram: codeOf(() => writeFileSync("/opt/spurwise/package.json", "x")),
    seesHome: existsSync("/root/.bashrc"),
    networks: Object.keys(networkInterfaces()).length,
  });
  createServer((request, response) => {
    if (request.url === "/hang") scanner.send("hang");
    response.end(JSON.stringify(facts()));
  }).listen(Number(process.env.SPURWISE_PORT), "127.0.0.1", () => watchdog.ready());
}
