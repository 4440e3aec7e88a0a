/** What is larger by less than this has nothing more to show: the space at its end, no line and no key. */
const slightPx = 6;

/**
 * Lets the keyboard scroll a part of the screen: it can be tabbed to as long as there is more in it than shows.
 * For use as an attachment; gives back what takes it off again.
 */
export const scrollable = (node: HTMLElement): (() => void) => {
  const look = () => {
    const beyondPx = node.scrollHeight - node.clientHeight;
    // A bar for so little would be a thumb as long as its track.
    node.style.overflowY = beyondPx > 0 && beyondPx < slightPx ? "hidden" : "";
    if (beyondPx >= slightPx) node.tabIndex = 0;
    else node.removeAttribute("tabindex");
  };
  const sizes = new ResizeObserver(look);
  // What is inside grows without the part itself growing: with a longer text, or when the typeface comes.
  const watch = () => {
    sizes.observe(node);
    for (const child of node.children) sizes.observe(child);
    look();
  };
  const contents = new MutationObserver(watch);
  watch();
  contents.observe(node, { childList: true, subtree: true, characterData: true });
  return () => {
    sizes.disconnect();
    contents.disconnect();
  };
};
