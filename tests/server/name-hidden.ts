import { nameOfFault } from "../../shared/electrical/fault-name.ts";
import type { Built } from "../../shared/scenario/scenario.schema.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import type { TestBench } from "./test-bench.ts";

/** Names the faults of a hunt that an answer names, whatever is hidden this time: `hidden-1` is the first. */
export async function nameHidden(bench: TestBench, { namedFaults = [] }: Built): Promise<void> {
  const hidden = bench.events("faults-hidden").flatMap(({ content }) => content["faults"] as HiddenFault[]);
  for (const [at, fault] of hidden.entries())
    if (namedFaults.includes(`hidden-${at + 1}`))
      await bench.does("name-fault", {
        name: { ...nameOfFault(fault), cores: [...nameOfFault(fault).cores] },
      });
}
