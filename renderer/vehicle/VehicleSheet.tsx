import { vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { presetOf, refused } from "./edit.ts";
import { Field } from "./Field.tsx";
import { Figures } from "./Figures.tsx";
import { PartPicture } from "./PartPicture.tsx";
import { declarationsOf, PART_COLOUR, VEHICLE_PARTS } from "./parts.ts";
import { SectionDrawing, selectedPart } from "./SectionDrawing.tsx";

const PartChoice = () => (
  <select
    aria-label={t.vehicle.partsName}
    value={selectedPart.value}
    onChange={(event) => {
      const part = VEHICLE_PARTS.find((one) => one === event.currentTarget.value);
      if (part) selectedPart.value = part;
    }}
  >
    {VEHICLE_PARTS.map((part) => (
      <option key={part} value={part}>
        {t.vehicle.parts[part]}
      </option>
    ))}
  </select>
);

/** Parameters of the selected part. */
function PartForm() {
  const part = selectedPart.value;
  const preset = vehicleById(presetOf(vehicle.value.id));
  const elsewhere = [...refused.value].filter(([path]) => !path.startsWith(`${part}.`));
  return (
    <section class="view p-form" aria-labelledby="part-title">
      <h2 class={`view-head ${PART_COLOUR[part]}`} id="part-title">
        <span class="tag">C</span>
        {t.vehicle.parameters(t.vehicle.parts[part])} <span class="grow" />
        <PartChoice />
      </h2>
      <form class="params" onSubmit={(event) => event.preventDefault()} key={part}>
        {declarationsOf(part)
          .filter(({ path }) => !path.startsWith("engine.map."))
          .map((declaration) => (
            <Field key={declaration.path} declaration={declaration} preset={preset} />
          ))}
        {elsewhere.map(([path, { why }]) => (
          <p key={path} class="bad">
            {why}
          </p>
        ))}
      </form>
    </section>
  );
}

/** One drawn sheet: the section, the part in hand with its picture and parameters, and what follows from them all. */
export const VehicleSheet = () => (
  <main class="vehicle-sheet" id="place">
    <section class="view p-section" aria-labelledby="view-a">
      <ViewHead id="view-a" tag="A" title={t.vehicle.section} sub={t.vehicle.sectionSub} />
      <SectionDrawing />
    </section>
    <section class="view p-picture" aria-labelledby="view-b">
      <ViewHead id="view-b" tag="B" title={t.vehicle.picture} sub={t.vehicle.parts[selectedPart.value]} />
      <PartPicture part={selectedPart.value} />
    </section>
    <PartForm />
    <section class="view p-figures" aria-labelledby="view-d">
      <ViewHead id="view-d" tag="D" title={t.vehicle.figures} sub={t.vehicle.figuresSub} />
      <Figures />
    </section>
  </main>
);
