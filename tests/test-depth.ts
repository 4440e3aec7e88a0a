/** How many random cases run, as a multiple of the usual number. One value for all tests: TEST_DEPTH. */
export const testDepth = Number(process.env["TEST_DEPTH"] ?? "1");

/** A number of random cases at this depth, one at least. */
export const atDepth = (usualCount: number): number => Math.max(1, Math.round(usualCount * testDepth));
