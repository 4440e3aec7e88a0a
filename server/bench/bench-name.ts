/** What a bench is called, by the end of its id; of one without records nothing more is known. */
export const benchNameOf = (benchId: string | undefined): string =>
  benchId === undefined ? "Spurwise" : `Spurwise ${benchId.slice(-4)}`;
