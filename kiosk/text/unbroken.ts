/** The units that stand behind a number on the screen, and the sizes written with them. */
const units = "mm²|mm|m|kA|mA|A|kV|V|kW|W|MΩ|mΩ|Ω|ms|min|s|h|°C|%|kg|l";
const afterNumber = new RegExp(`(\\d) (?=(?:${units})(?![\\p{L}\\d]))`, "gu");

/** The text with no line ending between a number and its unit. */
export const unbroken = (text: string): string => text.replace(afterNumber, "$1\u00a0");
