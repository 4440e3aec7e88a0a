/**
 * Version of the rule pack: counts up with any change that can change a verdict. `pack-lock.json` holds what the cases'
 * verdicts are under it; `npm run pack-lock` writes that anew once the version is raised.
 */
export const packVersion = "uk-17";
