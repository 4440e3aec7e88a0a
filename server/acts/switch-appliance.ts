import { z } from "zod";
import { appliancesOf, plugsAt } from "../attempt/load-appliances.ts";
import { appliancesOn } from "../attempt/load-state.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ appliance: z.string().max(80), isOn: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "switch-appliance": z.infer<typeof schema>;
  }
}

/** Switches an appliance at a point, at the moment of the run that is looked at. */
export const switchAppliance: Act<"switch-appliance"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: ({ state, scenario }, { appliance: id, isOn }) => {
    if (state.meter.supply !== "holds") return refuse("energise-first");
    const appliance = appliancesOf(scenario).find((one) => one.id === id);
    if (!appliance) return refuse("no-such-place");
    const { station, powerW } = appliance;
    const { nowS: atS } = state.load;
    const others = [...appliancesOn(state.load).values()].filter(
      (one) => one.station === station && one.appliance !== id,
    );
    if (isOn && others.length >= plugsAt(scenario, station)) return refuse("no-free-outlet");
    return events({ type: "appliance-switched", content: { appliance: id, station, powerW, isOn, atS } });
  },
};
