import type { CableId, ConductorId, ContactId, RoleClass } from "../board/ids.ts";
import type { NodeId } from "../wiring/buses.ts";

/** One core that joins two contacts. `crossed`: its ends are of different classes. */
export interface ConductorModel {
  id: ConductorId;
  cable: CableId;
  from: ContactId;
  to: ContactId;
  fromNode: NodeId;
  toNode: NodeId;
  /** The numbers of those nodes. */
  fromIndex: number;
  toIndex: number;
  /** The numbers of its contacts. */
  fromContactIndex: number;
  toContactIndex: number;
  class: RoleClass | "crossed";
}
