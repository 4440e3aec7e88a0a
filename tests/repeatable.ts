import * as fc from "fast-check";

/**
 * The seed of every property, so that a run that held holds again: a gate must not depend on luck. TEST_SEED
 * explores other cases, TEST_DEPTH more of them.
 */
fc.configureGlobal({ seed: Number(process.env["TEST_SEED"] ?? "60898") });
