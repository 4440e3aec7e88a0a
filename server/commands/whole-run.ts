/**
 * Whether a run of the checks goes over each case of every sweep, and over what stands around the bench: in CI and in a
 * deep run (`TEST_DEPTH`), else where `TEST_WHOLE=yes` asks for it. `TEST_WHOLE=no` keeps it from either.
 */
export const isWholeRun = ({ CI, TEST_DEPTH, TEST_WHOLE }: NodeJS.ProcessEnv): boolean =>
  TEST_WHOLE === undefined ? CI !== undefined || Number(TEST_DEPTH ?? "1") > 1 : TEST_WHOLE === "yes";
