import { accessoryRating } from "./accessory-rating.ts";
import { alwaysOn } from "./always-on.ts";
import { borrowedNeutral } from "./borrowed-neutral.ts";
import { conductorMissing } from "./conductor-missing.ts";
import { cookerControl } from "./cooker-control.ts";
import { cpcMissing } from "./cpc-missing.ts";
import { crowdedContact } from "./crowded-contact.ts";
import { deadEndLead } from "./dead-end-lead.ts";
import { deviceCable } from "./device-cable.ts";
import { floorArea } from "./floor-area.ts";
import { fuseSize } from "./fuse-size.ts";
import { fusedCable } from "./fused-cable.ts";
import { heavyOnRing } from "./heavy-on-ring.ts";
import { isolation } from "./isolation.ts";
import { leastSize } from "./least-size.ts";
import { lightingDevice } from "./lighting-device.ts";
import { lightingLoad } from "./lighting-load.ts";
import { needsFuse } from "./needs-fuse.ts";
import { neutralEarth } from "./neutral-earth.ts";
import { notServed } from "./not-served.ts";
import { outsideTask } from "./outside-task.ts";
import { ownCircuit } from "./own-circuit.ts";
import { pointLoad } from "./point-load.ts";
import { polarity } from "./polarity.ts";
import { radialCable } from "./radial-cable.ts";
import { rcd } from "./rcd.ts";
import { ringBridged } from "./ring-bridged.ts";
import { ringCable } from "./ring-cable.ts";
import { ringDevice } from "./ring-device.ts";
import { ringLoop } from "./ring-loop.ts";
import { ringOpen } from "./ring-open.ts";
import { ringThroughFuse } from "./ring-through-fuse.ts";
import type { Rule } from "./rule.ts";
import { selfLead } from "./self-lead.ts";
import { short } from "./short.ts";
import { splitConductors } from "./split-conductors.ts";
import { spurCable } from "./spur-cable.ts";
import { spurCount } from "./spur-count.ts";
import { spurHeavy } from "./spur-heavy.ts";
import { spurOnSpur } from "./spur-on-spur.ts";
import { spurOnePoint } from "./spur-one-point.ts";
import { spurPerPoint } from "./spur-per-point.ts";
import { switchedNeutral } from "./switched-neutral.ts";
import { twoRings } from "./two-rings.ts";
import { twoWays } from "./two-ways.ts";
import { unswitched } from "./unswitched.ts";
import { wrongSide } from "./wrong-side.ts";

/** Every rule of the pack, in the order of causes. */
export const rules: readonly Rule[] = [
  // Conductors
  short,
  neutralEarth,
  twoWays,
  borrowedNeutral,
  polarity,
  splitConductors,
  cpcMissing,
  conductorMissing,
  wrongSide,
  ringThroughFuse,
  // Shape
  ringOpen,
  ringBridged,
  ringLoop,
  ringDevice,
  ringCable,
  spurOnSpur,
  spurOnePoint,
  spurPerPoint,
  // What protects the cable, and what wants more than that
  needsFuse,
  spurCable,
  lightingDevice,
  radialCable,
  deviceCable,
  cookerControl,
  isolation,
  lightingLoad,
  // Nothing is hidden from here on
  notServed,
  outsideTask,
  deadEndLead,
  crowdedContact,
  selfLead,
  twoRings,
  spurCount,
  spurHeavy,
  ownCircuit,
  heavyOnRing,
  switchedNeutral,
  unswitched,
  alwaysOn,
  leastSize,
  fuseSize,
  fusedCable,
  pointLoad,
  accessoryRating,
  rcd,
  floorArea,
];
