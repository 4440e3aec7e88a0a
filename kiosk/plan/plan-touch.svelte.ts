import type { CableId, StationId } from "../../shared/board/ids.ts";
import { nearestLine } from "../geometry/nearest-line.ts";
import type { Point } from "../geometry/point.ts";
import type { Sizes } from "../panel/sizes.ts";
import { movedTo, plateUnder, type Press, pressAt, released } from "./drag.ts";
import type { PlanDrawing } from "./draw-plan.ts";
import type { PlanHand } from "./plan-hand.ts";

/** How far beside a cable a touch still means it, in mm; with one end of a cable in hand, plates come first. */
const cableReachMm = { free: 5, armed: 1.5 };

/** What a finger does on the plan: taps and drags become acts of the screen. Points are in px of the stage. */
export class PlanTouch {
  /** The press that is going on. */
  press = $state.raw<Press>();
  #isDone = false;
  readonly #hand: PlanHand;
  readonly #sizes: Sizes;
  readonly #drawing: () => PlanDrawing | undefined;

  /** `drawing` is asked at each touch: a finger means what is drawn then. */
  constructor(hand: PlanHand, sizes: Sizes, drawing: () => PlanDrawing | undefined) {
    this.#hand = hand;
    this.#sizes = sizes;
    this.#drawing = drawing;
  }

  /** The plate a drag began at. */
  get held() {
    const { press } = this;
    return press?.isDrag ? this.#plates.find(({ id }) => id === press.station) : undefined;
  }

  /** The station a drag would end at now. */
  get target(): string | undefined {
    return this.press?.isDrag ? plateUnder(this.press.now, this.#plates, this.#sizes.mmPx) : undefined;
  }

  down(at: Point): void {
    this.#isDone = false;
    if (this.#hand.canWire) this.press = pressAt(at, this.#plates);
  }

  /** The press moves on; true where it becomes a drag with this. */
  move(to: Point): boolean {
    const { press } = this;
    if (!press) return false;
    this.press = movedTo(press, to, this.#sizes.mmPx);
    return this.press.isDrag && !press.isDrag;
  }

  up(at: Point): void {
    const { press } = this;
    this.cancel();
    if (!press || !(press.isDrag || this.#isOtherEnd(press.station))) return;
    this.#isDone = true;
    if (!press.isDrag) return this.#hand.touchStation(press.station as StationId);
    const end = released(press, at, this.#plates, this.#sizes.mmPx);
    if (end.kind === "tap") this.#hand.touchStation(end.station as StationId);
    else if (end.kind === "missed") this.#hand.miss("wire.drag-missed");
    else this.#hand.lay({ station: end.from as StationId }, { station: end.to as StationId });
  }

  /** A key of the keyboard is pressed: what a finger did before it has nothing to do with what follows. */
  keyDown(): void {
    this.#isDone = false;
  }

  /** The finger is off the panel; true where all was done as it was lifted, and nothing is to follow. */
  end(): boolean {
    const isDone = this.#isDone;
    this.#isDone = false;
    return isDone;
  }

  cancel(): void {
    this.press = undefined;
  }

  /**
   * The other end of a cable whose first end is in hand: laid as the finger is lifted, for the press of a button comes
   * some hundredths of a second later.
   */
  #isOtherEnd(station: string): boolean {
    const { armed, armedStation } = this.#hand;
    return (armed?.kind === "station" || armed?.kind === "entry") && armedStation !== station;
  }

  /** A plate was pressed as a button: what was done as the finger was lifted is not done again. */
  pick(station: StationId): void {
    if (!this.#isDone) this.#hand.touchStation(station);
  }

  /**
   * What follows any touch: nothing where all was done as the finger was lifted, and nothing where a key was touched,
   * which knows itself.
   */
  click(at: Point, isOnKey: boolean): void {
    const isDone = this.#isDone;
    this.#isDone = false;
    if (!isDone && !isOnKey) this.#tap(at);
  }

  /** A tap beside a plate or a cable is meant for it; one on nothing puts down what is open, or says so. */
  #tap(at: Point): void {
    const hand = this.#hand;
    const { mmPx } = this.#sizes;
    const touchable = (this.#drawing()?.cables ?? []).map(({ cable, line }) => ({ id: cable.id, line }));
    const reachMm = hand.armed ? cableReachMm.armed : cableReachMm.free;
    const near = nearestLine(at, touchable, mmPx * reachMm);
    const plate = plateUnder(at, this.#plates, mmPx);
    if (plate && (!near || hand.armed)) hand.touchStation(plate as StationId);
    else if (near) hand.openCable(near as CableId);
    else if (hand.card) hand.closeCard();
    else hand.miss("wire.missed");
  }

  get #plates() {
    return this.#drawing()?.ground.plates ?? [];
  }
}
