/** What a part of the screen has to be read aloud: each marked text as a sentence, in the order they stand in. */
export const readable = (within: Element): string[] =>
  [...within.querySelectorAll<HTMLElement>("[data-read]")]
    // What stands in another marked text is read with that one; what is away behind something is not read.
    .filter((node) => !node.parentElement?.closest("[data-read]") && node.checkVisibility())
    .map((node) => (node.textContent ?? "").replace(/\s+/gu, " ").trim())
    .filter((text) => text !== "")
    .map((text) => (/[.!?:…]$/u.test(text) ? text : `${text}.`));
