/** A touch panel: what it shows and how large it is, so that the screen can be drawn in millimetres. */
export interface PanelProfile {
  name: string;
  widthPx: number;
  heightPx: number;
  diagonalInch: number;
}

export const panelProfiles: readonly PanelProfile[] = [
  { name: "7", widthPx: 800, heightPx: 480, diagonalInch: 7 },
  { name: "10", widthPx: 1280, heightPx: 800, diagonalInch: 10.1 },
];

const millimetresPerInch = 25.4;

/** Pixels to a millimetre of a panel, from its pixels and its diagonal. */
export const pxPerMm = ({ widthPx, heightPx, diagonalInch }: PanelProfile): number =>
  Math.hypot(widthPx, heightPx) / (diagonalInch * millimetresPerInch);

/**
 * The profile for a window: the one that `?panel=` names, otherwise the one whose long side is nearest to the
 * window's. A panel may stand on its end.
 */
export const choosePanel = (search: string, widthPx: number, heightPx: number): PanelProfile => {
  const asked = new URLSearchParams(search).get("panel");
  const named = panelProfiles.find(({ name }) => name === asked);
  if (named) return named;
  const longPx = Math.max(widthPx, heightPx);
  const far = (panel: PanelProfile) => Math.abs(panel.widthPx - longPx);
  return panelProfiles.reduce((best, panel) => (far(panel) < far(best) ? panel : best));
};
