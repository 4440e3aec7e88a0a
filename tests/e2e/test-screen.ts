import { expect } from "@playwright/test";
import type { BenchScreen } from "./bench-screen.ts";

/** The step Test of the bench screen, by touch. */
export class TestScreen {
  constructor(readonly bench: BenchScreen) {}

  /** Goes to the step Test. */
  static async open(bench: BenchScreen): Promise<TestScreen> {
    await bench.get("step-test").tap();
    await bench.get("screen-test").waitFor();
    return new TestScreen(bench);
  }

  get(what: string) {
    return this.bench.get(`meter-${what}`);
  }

  async tab(name: "meter" | "way" | "record"): Promise<void> {
    await this.get(`tab-${name}`).tap();
  }

  /** Puts the red probe on one terminal and the black on another; the card of each station is opened for it. */
  async probe(red: string, black: string): Promise<void> {
    await this.tab("meter");
    await this.get("probe-red").tap();
    for (const contact of [red, black]) {
      const [station] = contact.split(".");
      await this.bench.get(`station-${station}`).tap({ force: true });
      await this.bench.get(`contact-${contact}`).tap();
      await expect(this.bench.get(`contact-${contact}`)).toHaveAttribute("aria-pressed", "true");
      await this.bench.get("key-close-card").tap();
    }
  }

  /** What is said of the supply, at the circuit's tab. */
  async supply(): Promise<string> {
    await this.tab("way");
    return this.get("supply").innerText();
  }

  async ends(state: string): Promise<void> {
    await this.tab("way");
    await this.get(`ends-${state}`).tap();
    await expect(this.get(`ends-${state}`)).toHaveAttribute("aria-pressed", "true");
  }

  /** What the display shows as a number. */
  async number(): Promise<string> {
    await this.tab("meter");
    const shown = this.get("display").locator("b");
    // What the probes touch now is shown once the bench has answered: read when it stands still, as a person does.
    let before: string | undefined;
    await expect
      .poll(
        async () => {
          const last = before;
          before = await shown.innerText();
          return before === last;
        },
        { intervals: [150] },
      )
      .toBe(true);
    return (before ?? "").replace(/[^\d.]/g, "");
  }

  /** Writes down what the meter shows, or something else, and says pass. */
  async write(which: string | null, number: string | null): Promise<void> {
    await this.tab("meter");
    await this.get("write").tap();
    if (which) await this.get(`which-${which}`).tap();
    if (number === "over") await this.get("over").tap();
    else if (number !== null) for (const digit of number) await this.bench.get(`key-digit-${digit}`).tap();
    await this.get("pass").tap();
    await this.get("display").waitFor();
  }

  /** Nulls the leads of the low-ohms function. */
  async nullLeads(): Promise<void> {
    await this.get("dial-low-ohms").tap();
    await this.get("together").tap();
    await this.get("null").tap();
    await expect(this.get("null")).toHaveAttribute("aria-pressed", "true");
    await this.get("together").tap();
  }
}
