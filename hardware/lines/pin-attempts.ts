import { errnoOf } from "./errno.ts";
import { LinesError } from "./lines.ts";

type Facts = LinesError["facts"];

/**
 * Does something with an open pin.
 *
 * @throws LinesError `pin-failed`
 */
export function onPin<Result>(facts: Facts, call: string, action: () => Result): Result {
  try {
    return action();
  } catch (cause) {
    throw new LinesError("pin-failed", { ...facts, call, errno: errnoOf(cause) }, cause);
  }
}

/**
 * Takes a pin from the kernel.
 *
 * @throws LinesError `pin-in-use`, `no-rights`, `pin-failed`
 */
export function takePin<Pin>(facts: Facts, call: string, take: () => Pin): Pin {
  try {
    return take();
  } catch (cause) {
    const errno = errnoOf(cause);
    if (errno === "EBUSY") throw new LinesError("pin-in-use", facts, cause);
    if (errno === "EACCES" || errno === "EPERM") throw new LinesError("no-rights", facts, cause);
    throw new LinesError("pin-failed", { ...facts, call, errno }, cause);
  }
}
