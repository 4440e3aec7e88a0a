/** A board at rest is looked at so many times less often than one in use, where that keeps within its share. */
const restPauses = 7;
const mostRestPauseMs = 100;
/** What the exchanges may take of a core on a slow board: under 10 % at rest and 60 % in use. */
const mostShare = { atRest: 0.095, inUse: 0.57 };

/**
 * Milliseconds between two patterns of the watch.
 *
 * @param activePauseMs what is usual while the board is in use
 * @param exchangeMs how long a pattern takes on this board
 */
export function watchPauseMs(isAtRest: boolean, activePauseMs: number, exchangeMs: number): number {
  const pauseFor = (usualMs: number, share: number): number =>
    Math.max(usualMs, exchangeMs * (1 / share - 1));
  return isAtRest
    ? Math.min(mostRestPauseMs, pauseFor(restPauses * activePauseMs, mostShare.atRest))
    : pauseFor(activePauseMs, mostShare.inUse);
}
