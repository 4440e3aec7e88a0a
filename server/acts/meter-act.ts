import type { z } from "zod";
import type { StationId } from "../../shared/board/ids.ts";
import { stationOf } from "../../shared/board/ids.ts";
import { nullOhm } from "../../shared/electrical/meter.ts";
import { type MeterAct, meterActSchema } from "../../shared/protocol/meter.schema.ts";
import { meterLimits } from "../../shared/trade/meter-limits.ts";
import { tripMsNow } from "../attempt/meter-shows.ts";
import { mayTouch } from "../attempt/may-wire.ts";
import type { MeterState } from "../attempt/meter-state.ts";
import { refuse } from "../refusal.ts";
import { type Act, type Decision, events } from "./act.ts";
import { workers } from "./actor.ts";
import type { Situation } from "./situation.ts";

const schema = meterActSchema;

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "meter-act": z.infer<typeof schema>;
  }
}

/** What is done with hands in the way, or puts a test on the conductors: for a circuit that is dead. */
const isForDeadCircuit = ({ what }: MeterAct, { dial }: MeterState): boolean =>
  what === "ring-ends" || what === "link" || (what === "press" && dial === "insulation");

/** Something done at the meter, at the way of the circuit or at its points. */
export const meterAct: Act<"meter-act"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: (situation, act) => {
    const { meter } = situation.state;
    const { testTask, circuit } = situation;
    const live = isForDeadCircuit(act, meter) ? mayTouch(situation.state) : undefined;
    if (live) return live;
    switch (act.what) {
      case "probe":
        return act.at === null || act.at === "other-probe" || isOnBoard(situation, stationOf(act.at))
          ? acted({ act })
          : refuse("no-such-place");
      case "null": {
        const longLead = meter.hasLongLead ? { longLeadOhm: meterLimits.longLeadOhm } : {};
        const nulledOhm = nullOhm({ red: meter.red, black: meter.black, ...longLead });
        return nulledOhm === undefined ? refuse("tips-apart") : acted({ act, nulledOhm });
      }
      case "ring-ends": {
        const { ends } = circuit();
        if (!ends) return refuse("no-two-ends");
        return acted({ act, ends: [...ends] });
      }
      case "press": {
        const tripMs = tripMsNow(testTask, circuit(), meter);
        return acted(tripMs === undefined ? { act } : { act, tripMs });
      }
      case "part": {
        const { station, part } = act;
        const isThere = testTask.parts.some((one) => one.station === station && one.part === part);
        return isThere ? acted({ act }) : refuse("no-such-place");
      }
      case "switch":
        return testTask.switches.includes(act.station) ? acted({ act }) : refuse("no-such-place");
      default:
        return acted({ act });
    }
  },
};

const acted = (
  content: Extract<Parameters<typeof events>[0], { type: "meter-acted" }>["content"],
): Decision => events({ type: "meter-acted", content });

const isOnBoard = ({ scenario }: Situation, id: StationId): boolean =>
  scenario.stations.some((station) => station.id === id);
