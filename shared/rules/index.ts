import { accessoryRating } from "./accessory-rating.ts";
import { alwaysOn } from "./always-on.ts";
import { borrowedNeutral } from "./borrowed-neutral.ts";
import { conductorMissing } from "./conductor-missing.ts";
import { cookerControl } from "./cooker-control.ts";
import { cpcMissing } from "./cpc-missing.ts";
import { cpcSize } from "./cpc-size.ts";
import { crowdedContact } from "./crowded-contact.ts";
import { deadEndLead } from "./dead-end-lead.ts";
import { designCurrent } from "./design-current.ts";
import { deviceCable } from "./device-cable.ts";
import { faultLoop } from "./fault-loop.ts";
import { floorArea } from "./floor-area.ts";
import { fuseSize } from "./fuse-size.ts";
import { fusedCable } from "./fused-cable.ts";
import { fusedLoad } from "./fused-load.ts";
import { halfSwitched } from "./half-switched.ts";
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
import { readingMisjudged } from "./reading-misjudged.ts";
import { ringBridged } from "./ring-bridged.ts";
import { ringCable } from "./ring-cable.ts";
import { ringDevice } from "./ring-device.ts";
import { ringLoop } from "./ring-loop.ts";
import { ringOpen } from "./ring-open.ts";
import { ringShare } from "./ring-share.ts";
import { ringThroughFuse } from "./ring-through-fuse.ts";
import { type Rule, type RuleId, ruleIds } from "./rule.ts";
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
import { testMissing } from "./test-missing.ts";
import { testOrder } from "./test-order.ts";
import { twoRings } from "./two-rings.ts";
import { twoWays } from "./two-ways.ts";
import { unswitched } from "./unswitched.ts";
import { voltDrop } from "./volt-drop.ts";
import { wrongSide } from "./wrong-side.ts";

/** A rule that is listed and has no file does not compile. */
const ruleOf: { readonly [Id in RuleId]: Rule } = {
  "accessory-rating": accessoryRating,
  "always-on": alwaysOn,
  "half-switched": halfSwitched,
  "borrowed-neutral": borrowedNeutral,
  "conductor-missing": conductorMissing,
  "cooker-control": cookerControl,
  "cpc-missing": cpcMissing,
  "cpc-size": cpcSize,
  "crowded-contact": crowdedContact,
  "dead-end-lead": deadEndLead,
  "design-current": designCurrent,
  "device-cable": deviceCable,
  "fault-loop": faultLoop,
  "floor-area": floorArea,
  "fuse-size": fuseSize,
  "fused-cable": fusedCable,
  "fused-load": fusedLoad,
  "heavy-on-ring": heavyOnRing,
  isolation,
  "least-size": leastSize,
  "lighting-device": lightingDevice,
  "lighting-load": lightingLoad,
  "needs-fuse": needsFuse,
  "neutral-earth": neutralEarth,
  "not-served": notServed,
  "outside-task": outsideTask,
  "own-circuit": ownCircuit,
  "point-load": pointLoad,
  polarity,
  "radial-cable": radialCable,
  rcd,
  "reading-misjudged": readingMisjudged,
  "ring-bridged": ringBridged,
  "ring-cable": ringCable,
  "ring-device": ringDevice,
  "ring-loop": ringLoop,
  "ring-open": ringOpen,
  "ring-share": ringShare,
  "ring-through-fuse": ringThroughFuse,
  "self-lead": selfLead,
  short,
  "split-conductors": splitConductors,
  "spur-cable": spurCable,
  "spur-count": spurCount,
  "spur-heavy": spurHeavy,
  "spur-on-spur": spurOnSpur,
  "spur-one-point": spurOnePoint,
  "spur-per-point": spurPerPoint,
  "switched-neutral": switchedNeutral,
  "test-missing": testMissing,
  "test-order": testOrder,
  "two-rings": twoRings,
  "two-ways": twoWays,
  unswitched,
  "volt-drop": voltDrop,
  "wrong-side": wrongSide,
};

/** Every rule of the pack, in the order of causes. */
export const rules: readonly Rule[] = ruleIds.map((id) => ruleOf[id]);
