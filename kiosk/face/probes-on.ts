import type { ContactId } from "../../shared/board/ids.ts";
import type { MeterView, Probe, ProbeTouch, TestView } from "../../shared/protocol/test-view.ts";

const probes = ["red", "black"] as const;

/** The probes of the meter that stand on a contact, the red one first; none where no meter is out. */
export const probesOn = (meter: Pick<MeterView, "red" | "black"> | undefined, contact: ContactId): Probe[] =>
  probes.filter((probe) => meter?.[probe] === contact);

/** The ends that a probe lead may touch, where it touches a lead and it has not been said which end is meant; else none. */
export function endsToChoose({ meter, probeLeads }: TestView, probe: Probe): readonly ContactId[] {
  const touch: ProbeTouch = probeLeads?.[probe] ?? [];
  if (touch === "other-probe" || touch.length < 2) return [];
  return touch.some((contact) => contact === meter[probe]) ? [] : touch;
}

/** The probes that stand at a station, or whose lead may; the red one first. */
export const probesAtStation = (test: TestView | undefined, isAt: (contact: string) => boolean): Probe[] =>
  test ? probes.filter((probe) => isAt(test.meter[probe] ?? "") || endsToChoose(test, probe).some(isAt)) : [];
