let isThere = $state(false);
let isAsked = false;

/** True once the kiosk's typeface is loaded; until then text has the widths of another. */
export const isTypefaceThere = (): boolean => {
  if (!isAsked) {
    isAsked = true;
    const done = () => (isThere = true);
    void document.fonts.load("700 20px 'Atkinson Hyperlegible'").then(done, done);
  }
  return isThere;
};
