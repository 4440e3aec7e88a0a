/** The seed that every run takes anew, printed where the run starts; TEST_NEW_SEED brings a run back. */
export const newSeed = Number(process.env["TEST_NEW_SEED"] ?? "1");
