import type { LinesError } from "./lines.ts";

type Facts = LinesError["facts"];

/**
 * The English sentence for the technician, by code: what is wrong, then what puts it right. The kiosk has a
 * catalogue of its own per language; this one serves the terminal and the journal.
 */
const sentences: Record<LinesError["code"], (facts: Facts) => string> = {
  "board-not-found": ({ bcm }) =>
    `The mock board does not answer (every line${bcm === undefined ? "" : `, read through BCM ${bcm},`} is low): ` +
    `check the ribbon cable and the board's 3.3 V supply; the bench goes on by itself once the board is there.`,
  "no-gpio-driver": () =>
    "The GPIO package onoff is not installed or does not load, so no real board can be read: " +
    "install python3, make and g++, run `npm ci --include=optional`, and start the bench again.",
  "no-sysfs-gpio": ({ path }) =>
    `This kernel shows no pins at ${path ?? "/sys/class/gpio"}, so no real board can be read: ` +
    "on Debian 12 install libgpiod-dev, python3, make and g++ and run `npm ci --include=optional`, and the bench goes " +
    "through the kernel's character device; else use a Raspberry Pi OS kernel or a Pi model that has the sysfs GPIO " +
    "interface, or a sysfs proxy that is backed by libgpiod.",
  "no-rights": ({ signal, bcm, path }) =>
    `The account that runs the bench may not use ${bcm === undefined ? (path ?? "the pins") : `BCM ${bcm}${signal === undefined ? "" : ` (${signal})`}`}: ` +
    "add it to the gpio group (`sudo usermod -aG gpio spurwise`) and restart the service.",
  "pin-in-use": ({ signal, bcm }) =>
    `BCM ${bcm ?? "?"}${signal === undefined ? "" : `, wanted for ${signal},`} is held by something else on this Pi: ` +
    "take the overlay or interface (SPI, I2C, UART, 1-Wire) that uses it out of /boot/firmware/config.txt and " +
    "restart, or choose another pin in the board description.",
  "unknown-chip": ({ labels }) =>
    `None of this computer's GPIO chips (${labels ?? "none"}) is that of a Raspberry Pi header: ` +
    "run the bench on a Raspberry Pi, or start it with the simulated board.",
  "pin-failed": ({ signal, bcm, call, errno }) =>
    `BCM ${bcm ?? "?"}${signal === undefined ? "" : ` (${signal})`} failed in ${call ?? "use"}` +
    `${errno === undefined || errno === "" ? "" : ` with ${errno}`}: check that the board description names a pin of the ` +
    "40-pin header (BCM 0 to 27) and that nothing else changes it, then restart the bench.",
};

const isLinesCode = (code: string): code is LinesError["code"] => Object.hasOwn(sentences, code);

/** One sentence for the technician: why there is no board, and the remedy. */
export const linesSentence = ({ code, facts }: { code: string; facts: Facts }): string =>
  isLinesCode(code)
    ? sentences[code](facts)
    : "The scanner, which reads the mock board, stopped; it is started again by itself: " +
      "if the board is not there within a minute, restart the bench.";
