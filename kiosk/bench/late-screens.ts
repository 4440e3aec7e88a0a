/**
 * Screens and sheets that stand in no first load: each comes with its own texts and styles when it is opened, or before,
 * once the first screen stands.
 */
export const lateScreens = {
  makeDead: () => import("../steps/MakeDead.svelte"),
  planSheet: () => import("../steps/PlanSheet.svelte"),
  wire: () => import("../steps/Wire.svelte"),
  testStep: () => import("../testing/TestStep.svelte"),
  loadStep: () => import("../load/LoadStep.svelte"),
  handIn: () => import("../steps/HandIn.svelte"),
  handedIn: () => import("../steps/HandedIn.svelte"),
  health: () => import("../health/HealthSheet.svelte"),
  staff: () => import("../staff/StaffSheet.svelte"),
};

/** Fetches what is opened later, one after the other, so that a tap never waits for the network. */
export const fetchAhead = async (): Promise<void> => {
  for (const fetchScreen of Object.values(lateScreens)) await fetchScreen();
};
