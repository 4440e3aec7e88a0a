const isHidden = (element: Element): boolean =>
  element.closest(".visually-hidden, [hidden]") !== null || getComputedStyle(element).visibility === "hidden";

const name = (element: Element): string =>
  element.closest("[data-testid]")?.getAttribute("data-testid") ?? element.tagName.toLowerCase();

/** Rectangles of the text that stands directly in an element. */
const textRects = (element: Element): DOMRect[] =>
  [...element.childNodes].flatMap((node) => {
    if (node.nodeType !== Node.TEXT_NODE || (node.textContent ?? "").trim() === "") return [];
    const range = document.createRange();
    range.selectNodeContents(node);
    return [...range.getClientRects()].filter(({ width }) => width > 0);
  });

const isWithin = (inner: DOMRect, outer: DOMRect, slackPx: number): boolean =>
  inner.left >= outer.left - slackPx &&
  inner.right <= outer.right + slackPx &&
  inner.top >= outer.top - slackPx &&
  inner.bottom <= outer.bottom + slackPx;

interface Measure {
  /** The least font size, in pixels. */
  captionPx: number;
  /** The least size of anything to be touched, in pixels. */
  leastKeyPx: number;
}

/**
 * What is wrong with a screen as it is laid out: text too small, cut off, outside its key or outside the window;
 * keys too small or lying under something. Parts that can be scrolled may reach beyond their edge, downwards only.
 */
export const fitComplaints = (root: Element, { captionPx, leastKeyPx }: Measure): string[] => {
  const complaints: string[] = [];
  const page = new DOMRect(0, 0, window.innerWidth, window.innerHeight);
  for (const element of root.querySelectorAll<HTMLElement>("*")) {
    if (isHidden(element)) continue;
    const rects = textRects(element);
    if (rects.length > 0) {
      const text = (element.textContent ?? "").trim().slice(0, 40);
      const fontPx = Number.parseFloat(getComputedStyle(element).fontSize);
      if (fontPx < captionPx - 0.1) complaints.push(`small text "${text}" of ${name(element)}: ${fontPx}px`);
      const scroller = element.closest(".scroll, dialog");
      const key = element.closest("button");
      for (const rect of rects) {
        if (key && !isWithin(rect, key.getBoundingClientRect(), 1.5))
          complaints.push(`text "${text}" leaves its key ${name(element)}`);
        const frame = scroller ? scroller.getBoundingClientRect() : page;
        if (rect.left < frame.left - 1 || rect.right > frame.right + 1)
          complaints.push(`text "${text}" of ${name(element)} leaves at the side`);
        if (!scroller && (rect.top < -1 || rect.bottom > page.bottom + 1))
          complaints.push(`text "${text}" of ${name(element)} leaves the window`);
      }
    }
    const { overflowX, overflowY } = getComputedStyle(element);
    const isCut = (overflow: string) => overflow === "hidden" || overflow === "clip";
    if (isCut(overflowX) && element.scrollWidth > element.clientWidth + 2 && element.clientWidth > 0)
      complaints.push(`${name(element)} is cut off at the side`);
    if (isCut(overflowY) && element.scrollHeight > element.clientHeight + 2 && element.clientHeight > 0)
      complaints.push(`${name(element)} is cut off below`);
  }
  const dialog = root.querySelector("dialog[open]");
  for (const key of (dialog ?? root).querySelectorAll<HTMLElement>("button, input")) {
    if (isHidden(key)) continue;
    const rect = key.getBoundingClientRect();
    // A cable is touched anywhere near its line; its pill is there for the keyboard.
    if (key.classList.contains("pill")) continue;
    if (rect.width < leastKeyPx - 0.6 || rect.height < leastKeyPx - 0.6)
      complaints.push(`${name(key)} is ${Math.round(rect.width)} by ${Math.round(rect.height)} px`);
    const frame = key.closest(".scroll")?.getBoundingClientRect() ?? page;
    const [x, y] = [rect.left + rect.width / 2, rect.top + rect.height / 2];
    if (y < frame.top || y > frame.bottom) {
      if (!key.closest(".scroll, dialog")) complaints.push(`${name(key)} is outside the window`);
      continue;
    }
    const top = document.elementFromPoint(x, y);
    if (!top || (!key.contains(top) && !top.closest(".sheet") && !top.contains(key)))
      complaints.push(`${name(key)} lies under ${top ? name(top) : "nothing"}`);
  }
  return [...new Set(complaints)];
};
