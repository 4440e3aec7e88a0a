import { spawn } from "node:child_process";

/** Tells the service manager how the bench is; says nothing where there is none. */
export interface ServiceWatchdog {
  /** The bench listens. */
  ready(): void;
  /**
   * The scan loop turns, or the bench is waiting for a board that cannot be had and says so. Call it as often as
   * you like: at most three messages go out in the manager's time.
   */
  alive(): void;
}

/**
 * The watchdog of the systemd service, after the environment that systemd gives (sd_notify(3), sd_watchdog_enabled(3)).
 * Node has no datagram sockets of the local kind, so the small `systemd-notify` program carries the messages.
 *
 * @param monotonicMs the clock that spaces the messages
 */
export function systemdWatchdog(
  environment: Record<string, string | undefined>,
  monotonicMs: () => number,
): ServiceWatchdog {
  if (environment["NOTIFY_SOCKET"] === undefined) return { ready: () => undefined, alive: () => undefined };
  const periodMs = Number(environment["WATCHDOG_USEC"] ?? "0") / 1000;
  let lastMs = Number.NEGATIVE_INFINITY;
  const send = (message: string): void => {
    const child = spawn("systemd-notify", [message], { stdio: "ignore" });
    // Without the program the manager starts the service again, and its journal says why.
    child.on("error", () => undefined);
    child.unref();
  };
  return {
    ready: () => send("READY=1"),
    alive: () => {
      const nowMs = monotonicMs();
      if (!(periodMs > 0) || nowMs - lastMs < periodMs / 3) return;
      lastMs = nowMs;
      send("WATCHDOG=1");
    },
  };
}
