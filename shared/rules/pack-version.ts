/** Version of the rule pack: counts up with any change that can change a verdict. */
export const packVersion = "uk-3";
