import { en, type TextKey } from "./en.ts";

/** True for a key that the catalogues have a text for. */
export const isTextKey = (key: string): key is TextKey => Object.hasOwn(en, key);
