import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const guide: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Appendix H",
  checked: "secondary copy",
};
const memory: Source = { ...guide, checked: "from memory" };
/** As quoted at https://www.dses.co.uk/index.php/free-advice/147-does-a-cooker-need-an-isolator-switch */
const control: Source = { ...guide, clause: "Appendix H, cooker circuits" };
/** As quoted at https://diynot.com/diy/threads/cooker-switch-location.357157; later editions leave the number open. */
const shared: Source = {
  kind: "regulation",
  document: "IEE Wiring Regulations, 15th edition",
  clause: "476-20",
  checked: "secondary copy",
};
const practice: Source = { kind: "common practice, no source" };

/** Fixed appliances: what wants a circuit of its own, and where its control stands. */
export const applianceLimits = sourced({
  cookerControlMostM: [2, control],
  /** One control may serve this many appliances in a room. */
  appliancesPerCookerControl: [2, shared],
  ownCircuitOverLitres: [15, guide],
  /** A water heater of unstated litres counts as over 15 l above this. */
  ownCircuitHeaterOverW: [2000, practice],
  /** Cookers, hobs and ovens above this want a circuit of their own and are not for a ring. */
  ownCircuitCookingOverW: [2000, memory],
  /** So many fixed heaters on one ring are comprehensive space heating; one storage heater is too. */
  comprehensiveFromHeaters: [2, practice],
  /** Lighting or a fixed appliance straight off a socket-outlet circuit above this wants a fuse. */
  needsFuseAboveDeviceA: [16, guide],
});
