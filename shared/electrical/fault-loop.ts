import { rcdLimits } from "../trade/rcd-limits.ts";
import { supply } from "../trade/supply.ts";
import { type DisconnectingDevice, maximumZsOhm } from "../trade/maximum-zs.ts";

/** A device before a fault, and how soon it must be off. */
export interface LoopDevice {
  device: DisconnectingDevice;
  ratingA: number;
  disconnectionS: number;
}

export interface LoopLimit {
  limitOhm: number | undefined;
  isInTime: boolean;
}

/**
 * Earth fault loop impedance in ohms with the conductors hot: Zs = Ze + R1 + R2, where R1 + R2 is along all paths
 * there are (both legs of a ring) at 70 °C.
 */
export const loopOhm = (zeOhm: number, r1PlusR2HotOhm: number): number => zeOhm + r1PlusR2HotOhm;

/** Whether the overcurrent device alone is off in time: Zs <= Cmin U0 / Ia (BS 7671:2018 411.4.4, tables 41.2 to 41.4). */
export function loopLimit(zsOhm: number, { device, ratingA, disconnectionS }: LoopDevice): LoopLimit {
  const limitOhm = maximumZsOhm(device, ratingA, disconnectionS);
  return { limitOhm, isInTime: limitOhm !== undefined && zsOhm <= limitOhm };
}

/** A measured, cold Zs is compared with 0.8 of the limit; it is not corrected for temperature as well. */
export function measuredLoopLimit(measuredZsOhm: number, loop: LoopDevice): LoopLimit {
  const { limitOhm } = loopLimit(measuredZsOhm, loop);
  const coldOhm = limitOhm === undefined ? undefined : supply.measuredZsFactor * limitOhm;
  return { limitOhm: coldOhm, isInTime: coldOhm !== undefined && measuredZsOhm <= coldOhm };
}

/** TT: RA x IdN stays within 50 V (BS 7671:2018 411.5.3), RA being electrode and protective conductor. */
export function isTouchVoltageSafe(electrodeAndCpcOhm: number, rcdMa: number): boolean {
  return rcdMa > 0 && (electrodeAndCpcOhm * rcdMa) / 1000 <= rcdLimits.mostTouchV;
}

/** TN: an RCD sees the fault where the loop lets more than its rated residual current flow; same 50 V measure. */
export const doesRcdDisconnect = isTouchVoltageSafe;
