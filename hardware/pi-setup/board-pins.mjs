// Says what a board description asks of the Pi's pins, one thing a line, for setup.sh.
// usage: node board-pins.mjs BOARD.json
//   gpio=24=ip,pu     a line for config.txt: the pin as an input with its pull, from power-up on
//   release 24:high   what the stop hook does
//   bcm 24            a pin that is used
import { readFileSync } from "node:fs";

const { wiring } = JSON.parse(readFileSync(process.argv[2], "utf8"));

/** The pull that keeps the board at rest; the data pins are pulled down, so that no board reads as all low. */
const pulls = {
  outputEnable: "pu",
  load: "pu",
  latch: "pd",
  shiftClock: "pd",
  dataOut: "pd",
  dataIn: "pd",
  codeIn: "pd",
};

const pins =
  wiring.kind === "chain"
    ? Object.entries(wiring.pins).map(([signal, bcm]) => ({ bcm, pull: pulls[signal] }))
    : wiring.pins.map((bcm) => ({ bcm, pull: "pd" }));

const release =
  wiring.kind === "direct"
    ? wiring.pins.map((bcm) => `${bcm}:in`)
    : wiring.pins.outputEnable === undefined
      ? []
      : [`${wiring.pins.outputEnable}:high`];

for (const { bcm, pull } of pins) console.log(`gpio=${bcm}=ip,${pull}`);
if (release.length > 0) console.log(`release ${release.join(" ")}`);
for (const { bcm } of pins) console.log(`bcm ${bcm}`);
