import { getContext, setContext } from "svelte";
import type { CableId, StationId } from "../../shared/board/ids.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { CableEnd } from "../wiring/join-ends.ts";

/** What is told about beside the plan, as far as the plan marks it. */
type Told =
  | { readonly what: "station"; readonly id: StationId }
  | { readonly what: "cable"; readonly id: CableId }
  | { readonly what: "finding"; readonly id: string }
  | { readonly what: "contact" | "notes" | "choose" };

/** What somebody at the plan has open and in hand, and what their touches on it do. */
export interface PlanHand {
  readonly card: Told | null;
  /** What waits for its other end, and the station that it comes from. */
  readonly armed: { readonly kind: "station" | "entry" | "contact"; readonly id: string } | null;
  readonly armedStation: StationId | undefined;
  /** The work as it will be in a moment, with a cable that is being plugged: it is drawn then. */
  readonly foreseen: AttemptView | undefined;
  /** True while leads may be moved on the plan. */
  readonly canWire: boolean;
  touchStation(id: StationId): void;
  /** Tells about a station. */
  openCard(id: StationId): void;
  /** Tells about a cable. */
  openCable(id: CableId): void;
  closeCard(): void;
  /** Says what a touch or a drag that met nothing did not do. */
  miss(what: "wire.missed" | "wire.drag-missed"): void;
  /** Lays a cable from one end to the other. */
  lay(from: CableEnd, to: CableEnd): void;
}

const nothing = (): void => undefined;

/** The hand of who looks at a plan: nothing is open, and no touch does anything. */
export const onlyLooking: PlanHand = {
  card: null,
  armed: null,
  armedStation: undefined,
  foreseen: undefined,
  canWire: false,
  touchStation: nothing,
  openCard: nothing,
  openCable: nothing,
  closeCard: nothing,
  miss: nothing,
  lay: nothing,
};

const hand = Symbol("plan-hand");
export const provideHand = (made: PlanHand): PlanHand => setContext(hand, made);
export const useHand = (): PlanHand => getContext<PlanHand>(hand);
