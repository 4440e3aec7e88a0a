import { describe, expect, it } from "vitest";
import { LinesError } from "../../../hardware/lines/lines.ts";
import { linesSentence } from "../../../hardware/lines/lines-sentence.ts";

const cases: { error: LinesError; says: RegExp[] }[] = [
  {
    error: new LinesError("board-not-found", { wiring: "chain", bcm: 9 }),
    says: [/BCM 9/, /ribbon cable/, /3\.3 V/],
  },
  {
    error: new LinesError("board-not-found", { wiring: "direct" }),
    says: [/every line is low/, /ribbon cable/],
  },
  { error: new LinesError("no-gpio-driver", {}), says: [/onoff/, /npm ci --include=optional/] },
  { error: new LinesError("no-sysfs-gpio", { path: "/sys/class/gpio" }), says: [/kernel/, /libgpiod/] },
  {
    error: new LinesError("no-rights", { signal: "latch", bcm: 8 }),
    says: [/BCM 8 \(latch\)/, /usermod -aG gpio/],
  },
  {
    error: new LinesError("no-rights", { path: "/sys/class/gpio" }),
    says: [/\/sys\/class\/gpio/, /gpio group/],
  },
  {
    error: new LinesError("pin-in-use", { signal: "dataIn", bcm: 9 }),
    says: [/BCM 9/, /dataIn/, /config\.txt/],
  },
  {
    error: new LinesError("unknown-chip", { labels: "INT34C5:00" }),
    says: [/INT34C5:00/, /simulated board/],
  },
  {
    error: new LinesError("pin-failed", { signal: "latch", bcm: 54, call: "export", errno: "EINVAL" }),
    says: [/BCM 54 \(latch\)/, /export/, /EINVAL/, /BCM 0 to 27/],
  },
  {
    error: new LinesError("pin-failed", { bcm: 8, call: "read", errno: "" }),
    says: [/BCM 8 failed in read:/],
  },
];

describe("what the technician is told when a board cannot be had", () => {
  it.each(cases)("for $error.message: what is wrong, then the remedy, in one sentence", ({ error, says }) => {
    const sentence = linesSentence(error);
    for (const part of says) expect(sentence).toMatch(part);
    expect(sentence).toMatch(/^[A-Z][^!?]*: [^!?]*\.$/);
    expect(sentence.match(/\. [A-Z]/)).toBeNull();
    expect(sentence).not.toMatch(/undefined|\?/);
  });
});
