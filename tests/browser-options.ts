import { existsSync } from "node:fs";

/** The browser of the checks: Debian's Chromium without a window, or the whole of it where that is not there. */
const executablePath =
  ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"].find((path) => existsSync(path)) ??
  "/usr/bin/chromium";

/** How it is started: without a sandbox, because the checks run as root too. */
export const browserOptions = {
  executablePath,
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
