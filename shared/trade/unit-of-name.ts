/** The units that end names, the longer ones first so that `Mm2` is not read as a number and `OhmM` not as metres. */
const units: readonly (readonly [ending: string, unit: string])[] = [
  ["AsqrtSPerMm2", "A√s/mm²"],
  ["MilliohmPerM", "mΩ/m"],
  ["JPerKCm3", "J/(K cm³)"],
  ["MvPerAM", "mV/A/m"],
  ["MegohmM", "MΩ m"],
  ["Megohm", "MΩ"],
  ["Litres", "l"],
  ["OhmM", "Ω m"],
  ["PerC", "/°C"],
  ["Mm2", "mm²"],
  ["Ohm", "Ω"],
  ["Ma", "mA"],
  ["Mm", "mm"],
  ["Ms", "ms"],
  ["M2", "m²"],
  ["A", "A"],
  ["C", "°C"],
  ["M", "m"],
  ["S", "s"],
  ["V", "V"],
  ["W", "W"],
];

/** Splits a name into plain words and the unit that ends it, as in `capacityA`: "capacity" and "A". */
export function unitOfName(name: string): { words: string; unit: string } {
  const found = units.find(([ending]) => name.endsWith(ending));
  const stem = found ? name.slice(0, -found[0].length) : name;
  const words = stem.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  return { words, unit: found?.[1] ?? "" };
}
