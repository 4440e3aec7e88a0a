import type { BoardDescription } from "../../shared/board/board.schema.ts";

/** What a line is taken for where the description does not say: a long lead on the usual pull-up. */
export const usualElectrics = { pullUpOhm: 10_000, capacitancePf: 1_000 } as const;

/** The part of the supply from which a 74HC input surely reads high, from memory of common data sheets. */
const surelyHigh = 0.7;
/** For parts and leads that are not as they were described. */
const margin = 1.25;

/** Microseconds that a released line needs until it is read: R C ln(1 / (1 - 0.7)), with a quarter more. */
export function settleTimeUs({ electrics = usualElectrics }: BoardDescription["wiring"]): number {
  const { pullUpOhm, capacitancePf } = electrics;
  return margin * pullUpOhm * capacitancePf * 1e-6 * Math.log(1 / (1 - surelyHigh));
}
