import type { Page } from "@playwright/test";

/** Moves the focus by Tab alone to something, as far as a person would. */
const tabTo = async (page: Page, id: string): Promise<void> => {
  for (let presses = 0; presses < 150; presses += 1) {
    const at = await page.evaluate(() => document.activeElement?.getAttribute("data-testid"));
    if (at === id) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`${id} is not reached by Tab`);
};

/** Goes by Tab alone to something that is there, and presses it. */
export const pressByKeyboard = async (page: Page, id: string): Promise<void> => {
  await page.getByTestId(id).waitFor();
  await tabTo(page, id);
  await page.keyboard.press("Enter");
};

/** Whether what has the focus is seen to have it: an outline, or something else that changes with it. */
export const isFocusSeen = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const focused = document.activeElement;
    if (!focused || focused === document.body) return false;
    const { outlineStyle, outlineWidth } = getComputedStyle(focused);
    return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
  });
