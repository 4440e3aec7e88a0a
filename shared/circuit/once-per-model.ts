import type { CircuitModel } from "./model.ts";

/** Works something out of a model once, however many rules ask for it. A model never changes after it is built. */
export function oncePerModel<T>(work: (model: CircuitModel) => T): (model: CircuitModel) => T {
  const known = new WeakMap<CircuitModel, { result: T }>();
  return (model) => {
    const before = known.get(model);
    if (before) return before.result;
    const result = work(model);
    known.set(model, { result });
    return result;
  };
}
