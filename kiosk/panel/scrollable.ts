/**
 * Lets the keyboard scroll a part of the screen: it can be tabbed to as long as there is more in it than shows.
 * For use as an attachment; gives back what takes it off again.
 */
export const scrollable = (node: HTMLElement): (() => void) => {
  const look = () => {
    if (node.scrollHeight > node.clientHeight) node.tabIndex = 0;
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
