import type { Preferences } from "../state/preferences.ts";
import { prefer, preferences } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";

interface ChoiceProps<K extends keyof Preferences> {
  readonly name: string;
  readonly of: K;
  readonly options: readonly (readonly [Preferences[K], string])[];
}

/** One of a few: radio buttons under a name. */
function Choice<K extends "theme" | "shaftUnit" | "roadUnit">({ name, of, options }: ChoiceProps<K>) {
  return (
    <fieldset>
      <legend>{name}</legend>
      {options.map(([value, text]) => (
        <label key={value} class="check">
          <input
            type="radio"
            name={of}
            checked={preferences.value[of] === value}
            onChange={() => prefer({ [of]: value })}
          />
          {text}
        </label>
      ))}
    </fieldset>
  );
}

const Toggle = ({ name, of }: { name: string; of: "projector" | "singleKeys" }) => (
  <label class="check">
    <input
      type="checkbox"
      checked={preferences.value[of]}
      onChange={() => prefer({ [of]: !preferences.value[of] })}
    />
    {name}
  </label>
);

/** What one person likes. Everything takes effect at once. */
export const SettingsForm = () => (
  <form class="settings" onSubmit={(event) => event.preventDefault()}>
    <Choice
      name={t.settings.theme}
      of="theme"
      options={[
        ["system", t.settings.themes.system],
        ["light", t.settings.themes.light],
        ["dark", t.settings.themes.dark],
      ]}
    />
    <Choice
      name={t.settings.shaftUnit}
      of="shaftUnit"
      options={[
        ["rpm", "rev/min"],
        ["radps", "rad/s"],
      ]}
    />
    <Choice
      name={t.settings.roadUnit}
      of="roadUnit"
      options={[
        ["kmh", "km/h"],
        ["mph", "mph"],
      ]}
    />
    <Toggle name={t.settings.projector} of="projector" />
    <Toggle name={t.settings.singleKeys} of="singleKeys" />
    <p>{t.settings.kept}</p>
  </form>
);
