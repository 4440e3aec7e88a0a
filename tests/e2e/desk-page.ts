import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { deskPin } from "./desk-people.ts";

const axeProblems = async (page: Page): Promise<string[]> => {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
};

/** On a desk's own screen and on a telephone: nothing that axe finds, and nothing beside the window. */
export async function isClean(page: Page, name: string): Promise<void> {
  for (const [width, height] of [
    [390, 844],
    [1280, 800],
  ] as const) {
    await page.setViewportSize({ width, height });
    expect(await axeProblems(page), `${name} at ${width}`).toEqual([]);
    const beside = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beside, `${name} at ${width}`).toBeLessThanOrEqual(0);
    const folder = process.env["SPURWISE_DESK_PICTURES"];
    if (folder) await page.screenshot({ path: `${folder}/${name}-${width}.png`, fullPage: true });
  }
}

/** Signs one of the staff in at the desk, over the network. */
export async function signInAtDesk(page: Page, address: string, name: string): Promise<void> {
  await page.goto(address);
  await page.getByLabel("Your name").fill(name);
  await page.getByLabel("Your PIN").fill(deskPin);
  await page.getByRole("button", { name: "Sign in" }).click();
  // A PIN is dear to check, on purpose.
  await expect(page.getByTestId("desk-me")).toContainText(name, { timeout: 30_000 });
}
