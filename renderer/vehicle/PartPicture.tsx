import { runSettings } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { MapId } from "../plots/map/kinds.ts";
import { mapLayout } from "../plots/map/layout.ts";
import { MapDrawing } from "../plots/map/MapDrawing.tsx";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { BatteryCurve } from "./BatteryCurve.tsx";
import { GearFront } from "./GearFront.tsx";
import type { FormPart } from "./parts.ts";

const NO_ROWS = { back: 0, least: 0, most: 0 };

/** The map that shows what a part can do; the road's resistance and the vehicle's pull belong to the body. */
const MAP_OF: Readonly<Partial<Record<FormPart, MapId>>> = {
  engine: "engine",
  fuel: "engine",
  sunMachine: "sunMachine",
  outputMachine: "outputMachine",
  finalDrive: "wheels",
  body: "wheels",
  control: "wheels",
  auxiliary: "wheels",
  about: "wheels",
};

interface BoxProps {
  readonly map: MapId;
  readonly of: Vehicle;
  readonly width: number;
  readonly height: number;
}

function MapPicture({ map, of: v, width, height }: BoxProps) {
  const { text } = metrics.value;
  const settings = runSettings({}, { startSoc: v.battery.socStart, auxiliaryPower: v.auxiliary.power });
  const layout = mapLayout({
    map,
    vehicle: v,
    settings,
    extent: NO_ROWS,
    width,
    height,
    text,
    units: units.value,
    measure,
    names: t.map.lines,
  });
  return <MapDrawing layout={layout} width={width} height={height} text={text} />;
}

interface PictureProps {
  readonly part: FormPart;
  /** one that need not be in force */
  readonly of: Vehicle;
}

/** The selected part's own picture, drawn from a vehicle's parameters. */
export function PartPicture({ part, of }: PictureProps) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const map = MAP_OF[part];
  const ready = width > 0 && fontsReady.value >= 0;
  return (
    <div class="drawing" ref={ref}>
      {ready && part === "gearSet" && <GearFront teeth={of.gearSet} width={width} height={height} />}
      {ready && part === "battery" && <BatteryCurve battery={of.battery} width={width} height={height} />}
      {ready && map && <MapPicture map={map} of={of} width={width} height={height} />}
    </div>
  );
}
