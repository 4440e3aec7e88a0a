import { type ContactId, contactId, entryOf, roleOf, type StationId } from "../board/ids.ts";
import { meterLimits } from "../trade/meter-limits.ts";
import { ringTestLimits } from "../trade/ring-test-limits.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import { meterNetwork, type MeterSetup } from "./meter-setup.ts";
import { resistanceBetweenOhm } from "./meter.ts";

/**
 * Whether line at a point is the line of its way, as it is found during the R1 + R2 test: with line linked to earth at
 * the way, or crossed with it round a ring, line reads to earth and neutral does not, or no more than through the loads
 * that were left in. A switched line also has to read with the switches one way and not the other. `line` and `earth` are where the probes are. Undefined where nothing
 * reads: then nothing is shown.
 */
export function polarityAt(
  built: AsBuilt,
  setup: MeterSetup,
  { line, earth }: { line: ContactId; earth: ContactId },
): boolean | undefined {
  const toEarthOhm = (contact: ContactId, positions = setup.positions): number => {
    const meter = meterNetwork(built, positions === undefined ? setup : { ...setup, positions });
    return resistanceBetweenOhm(meter, contact, earth) ?? Infinity;
  };
  const reads = (contact: ContactId, positions = setup.positions): boolean =>
    toEarthOhm(contact, positions) <= meterLimits.mostOhm;
  const neutral = contactId(entryOf(line), "N");
  const leastLoadOhm = ringTestLimits.r1RnToleranceOhm;
  if (reads(neutral) && toEarthOhm(neutral) < toEarthOhm(line) + leastLoadOhm) return false;
  const all = (position: 0 | 1): Map<StationId, 0 | 1> =>
    new Map(built.buses.switches.map((id) => [id, position]));
  if (roleOf(line) !== "SL") return reads(line) ? true : undefined;
  const [isOnAt0, isOnAt1] = [reads(line, all(0)), reads(line, all(1))];
  if (!isOnAt0 && !isOnAt1) return undefined;
  return isOnAt0 !== isOnAt1;
}
