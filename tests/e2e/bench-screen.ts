import { expect, type LaunchOptions, type Page } from "@playwright/test";

/** How Chromium is started here: Debian's, without a sandbox where the checks run as root. */
export const browserOptions: LaunchOptions = {
  executablePath: "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

/** The two panels a bench comes with. */
export const panels = [
  { name: "800x480", width: 800, height: 480 },
  { name: "1280x800", width: 1280, height: 800 },
] as const;

/** The bench screen as a person with a finger uses it. */
export class BenchScreen {
  constructor(readonly page: Page) {}

  get(id: string) {
    return this.page.getByTestId(id);
  }

  /** Signs in as a guest, starts a task in practice and goes on to wiring. */
  async openTask(address: string, scenario: string): Promise<void> {
    await this.page.goto(address);
    await this.get("key-guest").tap();
    await this.get(`scenario-${scenario}`).tap();
    await this.get("key-practice").tap();
    await this.get("key-accept-caution").tap();
    await this.get("step-wire").tap();
    await this.get("screen-wire").waitFor();
  }

  /** Takes cable of a size from the tray: what is run from then on is of it. */
  async takeCable(csaMm2: number): Promise<void> {
    await this.get("key-tray").tap();
    await this.get(`key-take-${csaMm2}`).tap();
  }

  /** Runs a cable by tapping one station of the plan and then the other. */
  async wireByTaps(from: string, to: string): Promise<void> {
    await this.get(`station-${from}`).tap();
    await this.get("key-run-cable").tap();
    await this.get(`station-${to}`).tap();
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

  /** The notes on the wiring that ask to put something right. */
  findings() {
    return this.page.locator("[data-testid^='finding-']");
  }
}
