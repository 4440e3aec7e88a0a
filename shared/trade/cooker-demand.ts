import { diversity } from "./diversity.ts";

/**
 * Demand of a household cooker in amperes: the first 10 A in full, 30 % of the rest, and 5 A where the control unit
 * has a socket outlet (On-Site Guide Table A2). `fullLoadA` is the current with everything on.
 */
export function cookerDemandA(fullLoadA: number, hasSocketOutlet: boolean): number {
  const { cookerFullToA, cookerRestFraction, cookerSocketOutletA } = diversity;
  const restA = Math.max(0, fullLoadA - cookerFullToA);
  return (
    Math.min(fullLoadA, cookerFullToA) +
    cookerRestFraction * restA +
    (hasSocketOutlet ? cookerSocketOutletA : 0)
  );
}
