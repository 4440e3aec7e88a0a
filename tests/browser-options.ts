import { existsSync } from "node:fs";

/** Chromium without a window, which takes a fifth less processor time, or the whole of it where that is all there is. */
const programs = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

/** How Chromium is started for the checks: Debian's, and without a sandbox, because they run as root too. */
export const browserOptions = {
  executablePath: programs.find((program) => existsSync(program)) ?? "/usr/bin/chromium-headless-shell",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};
