import type { StationId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { disconnectingDevice } from "../trade/disconnecting-device.ts";
import { disconnectionTimeS } from "../trade/disconnection-time.ts";
import type { DisconnectingDevice } from "../trade/maximum-zs.ts";
import type { Gap } from "./circuit-gaps.ts";

/** The device of a way, as far as it disconnects faults. */
export interface CircuitDevice {
  way: StationId;
  device: DisconnectingDevice;
  ratingA: number;
  /** 0 where there is no RCD. */
  rcdMa: number;
  isTt: boolean;
  disconnectionS: number;
  letThroughA2s?: number | undefined;
}

/** The device a circuit hangs on, or what nobody has said about it. `zones` are all zones of the circuit. */
export function circuitDevice(
  model: CircuitModel,
  root: Zone,
  zones: readonly Zone[],
): { device: CircuitDevice; gaps: [] } | { device?: undefined; gaps: Gap[] } {
  const way = root.upstream.station;
  const { deviceStandard, deviceCurve, deviceRatingA, rcdMa, letThroughA2s } =
    model.stations.get(way)?.settings ?? {};
  const device = deviceStandard && disconnectingDevice(deviceStandard, deviceCurve);
  if (deviceRatingA === undefined || device === undefined) {
    const lacks = (field: string): Gap => ({ kind: "station", id: way, field, cause: "value" });
    const kind =
      deviceStandard === undefined ? [lacks("deviceStandard")] : device ? [] : [lacks("deviceCurve")];
    return { gaps: [...(deviceRatingA === undefined ? [lacks("deviceRatingA")] : []), ...kind] };
  }
  const isTt = (model.wiring.supply?.earthing ?? defaults.earthing) === "TT";
  const hasSocketOutlets = zones.some((zone) =>
    zone.stations.some((id) => {
      const station = model.stations.get(id);
      return station?.kind === "socket-outlet" || station?.settings?.hasSocketOutlet === true;
    }),
  );
  return {
    gaps: [],
    device: {
      way,
      device,
      ratingA: deviceRatingA,
      rcdMa: rcdMa ?? defaults.rcdMa,
      isTt,
      disconnectionS: disconnectionTimeS(isTt, deviceRatingA, hasSocketOutlets),
      letThroughA2s,
    },
  };
}
