/** A name that is small within a sentence, as it stands by itself. */
export const withCapital = (name: string): string => name.charAt(0).toLocaleUpperCase() + name.slice(1);
