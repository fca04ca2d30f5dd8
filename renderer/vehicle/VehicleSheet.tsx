import { vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { EngineMapForm } from "./EngineMapForm.tsx";
import { EngineMapRow } from "./EngineMapRow.tsx";
import { presetOf, refused } from "./edit.ts";
import { Field } from "./Field.tsx";
import { Figures } from "./Figures.tsx";
import { fittedMap, mapDraft } from "./map-draft.ts";
import { PartPicture } from "./PartPicture.tsx";
import { declarationsOf, FORM_PARTS, isOf, PART_COLOUR } from "./parts.ts";
import { SectionDrawing, selectedPart } from "./SectionDrawing.tsx";

const PartChoice = () => (
  <select
    aria-label={t.vehicle.partsName}
    value={selectedPart.value}
    onChange={(event) => {
      const part = FORM_PARTS.find((one) => one === event.currentTarget.value);
      if (part) selectedPart.value = part;
    }}
  >
    {FORM_PARTS.map((part) => (
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
  const elsewhere = [...refused.value].filter(([path]) => !isOf(part, path));
  const draft = part === "engine" ? mapDraft.value : null;
  return (
    <section class="view p-form" aria-labelledby="part-title">
      <h2 class={`view-head ${PART_COLOUR[part]}`} id="part-title">
        <span class="tag">C</span>
        {part === "about" ? t.vehicle.parts.about : t.vehicle.parameters(t.vehicle.parts[part])}{" "}
        <span class="grow" />
        <PartChoice />
      </h2>
      {draft ? (
        <EngineMapForm draft={draft} />
      ) : (
        <form class="params" onSubmit={(event) => event.preventDefault()} key={part}>
          {part === "engine" && <EngineMapRow />}
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
      )}
    </section>
  );
}

/** The part in hand as it is, or as a map that was opened would make it. */
function Picture() {
  const part = selectedPart.value;
  const draft = part === "engine" ? mapDraft.value : null;
  const opened = draft ? fittedMap.value?.fitted.vehicle : null;
  // The vehicle as a whole has the picture of what it does on the road.
  const shown = t.vehicle.parts[part === "about" ? "body" : part];
  const sub = opened && draft ? t.vehicle.map.notInForce(draft.name) : shown;
  return (
    <section class="view p-picture" aria-labelledby="view-b">
      <ViewHead id="view-b" tag="B" title={t.vehicle.picture} sub={sub} />
      <PartPicture part={part} of={opened ?? vehicle.value} />
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
    <Picture />
    <PartForm />
    <section class="view p-figures" aria-labelledby="view-d">
      <ViewHead id="view-d" tag="D" title={t.vehicle.figures} sub={t.vehicle.figuresSub} />
      <Figures />
    </section>
  </main>
);
