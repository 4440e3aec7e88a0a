import { type Component, flushSync, mount, tick, unmount } from "svelte";
import { afterEach, expect, it } from "vitest";
import { Desk } from "../../../kiosk/desk/desk-state.svelte.ts";
import { DeskWords } from "../../../kiosk/desk/desk-words.svelte.ts";
import DeskKeyboard from "../../../kiosk/desk/DeskKeyboard.svelte";
import DeskStage from "./DeskStage.svelte";

let mounted: object | undefined;
afterEach(async () => {
  if (mounted) await unmount(mounted);
  document.body.replaceChildren();
});

function shown(field: HTMLElement): void {
  document.body.append(field);
  // The stage hands on to the part what the part asks for, and knows no more of it.
  const part = DeskKeyboard as unknown as Component<Record<string, unknown>>;
  const props = { desk: new Desk(new DeskWords()), part, given: {} };
  mounted = mount(DeskStage, { target: document.body, props });
  flushSync();
}
const keyboard = () => document.querySelector<HTMLElement>('[data-testid="desk-keyboard"]');
const press = (name: string) =>
  [...(keyboard()?.querySelectorAll("button") ?? [])]
    .find((one) => one.textContent?.trim() === name)
    ?.click();
const touch = async (field: HTMLElement, pointerType: string) => {
  field.dispatchEvent(new PointerEvent("pointerdown", { pointerType, bubbles: true }));
  field.focus();
  await tick();
};

it("a field that is touched at the bench brings a keyboard, which types where the caret stands", async () => {
  const field = document.createElement("textarea");
  field.maxLength = 12;
  shown(field);
  await touch(field, "touch");
  const heard: string[] = [];
  field.addEventListener("input", () => heard.push(field.value));
  press("Capital");
  await tick();
  press("O");
  await tick();
  for (const name of ["k", "Space", "1", "Delete"]) press(name);
  expect(field.value).toBe("Ok ");
  field.setSelectionRange(0, 0);
  press("n");
  press("Enter");
  expect(field.value).toBe("n\nOk ");
  expect(heard.at(-1)).toBe("n\nOk ");
  for (let count = 0; count < 12; count += 1) press("x");
  expect(field.value).toHaveLength(12);
  press("Close");
  await tick();
  expect(keyboard()).toBeNull();
});

it("one that is reached with the mouse or the Tab key brings none", async () => {
  const field = document.createElement("input");
  shown(field);
  await touch(field, "mouse");
  expect(keyboard()).toBeNull();
});
