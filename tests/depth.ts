const asked = Number(process.env["TEST_DEPTH"] ?? "1");

/** How many times the usual number of random cases a check runs; `TEST_DEPTH` in the environment sets it. */
export const testDepth = Number.isFinite(asked) && asked >= 1 ? Math.floor(asked) : 1;
