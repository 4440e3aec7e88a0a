import { expect, type Locator, type Page } from "@playwright/test";
import { isWhole } from "../breadth.ts";

/** The two panels a bench comes with. */
export const panels = [
  { name: "800x480", width: 800, height: 480 },
  { name: "1280x800", width: 1280, height: 800 },
] as const;

/** Those that a go is made at: both where the run is whole, else the small one, where there is less room. */
export const panelsOfRun = isWhole ? panels : panels.slice(0, 1);

/** The bench screen as a person with a finger uses it. */
export class BenchScreen {
  constructor(readonly page: Page) {}

  get(id: string) {
    return this.page.getByTestId(id);
  }

  /** Signs in as a guest, starts a task in practice and goes on to wiring. */
  async openTask(address: string, scenario: string): Promise<void> {
    await this.page.goto(address);
    await this.chooseTask(scenario);
  }

  /** From the sign-in of a page that is open to the step Wire of a task, as a guest. */
  async chooseTask(scenario: string): Promise<void> {
    await this.get("key-guest").tap();
    await this.get(`scenario-${scenario}`).tap();
    await this.get("key-practice").tap();
    await this.get("key-accept-caution").tap();
    await this.get("step-wire").tap();
    await this.get("screen-wire").waitFor();
  }

  /** Types a badge code on the page's own keyboard. */
  async signInByBadge(code: string): Promise<void> {
    await this.get("key-badge").tap();
    for (const letter of code)
      await this.get("keyboard").getByRole("button", { name: letter, exact: true }).tap();
    await this.get("key-enter").tap();
  }

  /** Puts in what was found there, from the list of it. */
  async matchAsFound(): Promise<void> {
    await this.get("key-menu").tap();
    await this.get("key-as-found").tap();
    await this.get("key-match").tap();
  }

  /** Makes the circuit dead, each step after those before it. */
  async makeDead(): Promise<void> {
    for (const what of ["chart", "breaker-1", "padlock-1", "proving"]) await this.get(`dead-${what}`).tap();
    for (const [first, second] of ["LN", "LE", "NE"] as const) {
      await this.get(`dead-terminal-${first}`).tap();
      await this.get(`dead-terminal-${second}`).tap();
    }
    await this.get("dead-proving").tap();
  }

  /** Types a number on the worksheet's keys and enters it. */
  async enterNumber(number: string): Promise<void> {
    for (const digit of number) await this.get(`key-digit-${digit}`).tap();
    await this.get("key-enter-number").tap();
  }

  /** Takes cable of a size from the tray: what is run from then on is of it. */
  async takeCable(csaMm2: number): Promise<void> {
    await this.get("key-tray").tap();
    await this.get(`key-take-${csaMm2}`).tap();
  }

  /** Runs a cable by tapping one station of the plan and then the other. */
  async wireByTaps(from: string, to: string): Promise<void> {
    await this.get(`station-${from}`).tap();
    await this.get(`station-${to}`).tap();
  }

  /** Opens the card of a station: the second tap on it does. */
  async openCard(station: string): Promise<void> {
    await this.get(`station-${station}`).tap();
    await this.get(`station-${station}`).tap();
  }

  /** Runs a cable from an entry of a station, chosen on its card, to another station or one of its entries. */
  async wireFromEntry(entry: string, to: string, toEntry?: string): Promise<void> {
    await this.openCard(entry.slice(0, entry.lastIndexOf(".")));
    await this.get(`entry-${entry}`).tap();
    await this.get(`station-${to}`).tap();
    if (toEntry !== undefined) await this.get(`entry-${toEntry}`).tap();
  }

  /** Opens two stations to full size on the board's face. */
  async openOnFace(first: string, second: string): Promise<void> {
    await this.get(`station-${first}`).tap();
    await this.get(`station-${second}`).tap();
  }

  /** Chooses what is fitted at a station, on its card. */
  async fit(station: string, setting: string, value: string): Promise<void> {
    await this.openCard(station);
    await this.get(`key-change-${setting}`).tap();
    await this.get(`key-set-${setting}-${value}`).tap();
    await this.get("key-close-card").tap();
  }

  /** Leaves the task that is open; its record stays. */
  async leaveTask(): Promise<void> {
    await this.get("key-menu").tap();
    await this.get("key-leave").tap();
    await this.get("key-yes").tap();
    await this.get("screen-scenarios").waitFor();
  }

  /** Runs a cable by dragging from one station of the plan to another. */
  async wireByDrag(from: string, to: string): Promise<void> {
    const centre = async (id: string) => {
      const box = await this.get(`station-${id}`).boundingBox();
      if (!box) throw new Error(`station ${id} is not drawn`);
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    };
    const [start, end] = [await centre(from), await centre(to)];
    await this.page.mouse.move(start.x, start.y);
    await this.page.mouse.down();
    await this.page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2, { steps: 4 });
    await this.page.mouse.move(end.x, end.y, { steps: 4 });
    await this.page.mouse.up();
  }

  /** Waits until a cable is drawn as sensed. */
  async expectCable(id: string): Promise<void> {
    await expect(this.get(`cable-${id}`)).toBeAttached();
  }

  /** Waits until so many cables are drawn as sensed. */
  async expectCableCount(count: number): Promise<void> {
    await expect(this.page.locator("[data-testid^='cable-']")).toHaveCount(count);
  }

  /** Pulls the lead at a contact on the board's face. */
  async pullLead(station: string, contact: string): Promise<void> {
    await this.get("key-face").tap();
    await this.get(`station-${station}`).tap();
    await this.get(`contact-${contact}`).tap();
    await this.get("key-pull-lead").tap();
    await this.get("key-face").tap();
  }

  async check(): Promise<void> {
    await this.get("key-check").tap();
  }

  /**
   * Checks the wiring until what the verdict brings stands: a busy machine may answer later than the screen waits for,
   * and then shows nothing; the key is there still.
   */
  async checkUntil(brought: Locator): Promise<void> {
    await expect(async () => {
      await this.check();
      await brought.waitFor({ timeout: 5_000 });
    }).toPass();
  }

  /** The notes on the wiring that ask to put something right. */
  findings() {
    return this.page.locator("[data-testid^='finding-']");
  }
}
