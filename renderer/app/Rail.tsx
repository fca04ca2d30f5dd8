import { PLACES, place } from "../state/place.ts";
import { t } from "../texts/catalogue.ts";
import { Icon, type IconName } from "../ui/icons.tsx";
import { PLACE } from "./places.ts";
import { type AppWindow, openWindow, toggleWindow } from "./window.ts";

const WINDOWS: readonly { readonly name: AppWindow; readonly icon: IconName }[] = [
  { name: "glossary", icon: "glossary" },
  { name: "keys", icon: "keys" },
  { name: "settings", icon: "settings" },
];

/** The places, and at its foot the windows. */
export const Rail = () => (
  <nav class="rail" aria-label={t.rail.name}>
    {PLACES.map((name) => (
      <a key={name} href={`#${name}`} aria-current={place.value === name ? "page" : undefined}>
        <Icon name={PLACE[name].icon} /> {t.rail[name]}
      </a>
    ))}
    <span class="grow" />
    {WINDOWS.map(({ name, icon }) => (
      <button
        type="button"
        key={name}
        aria-haspopup="dialog"
        aria-expanded={openWindow.value === name}
        onClick={() => toggleWindow(name)}
      >
        <Icon name={icon} /> {t.rail[name]}
      </button>
    ))}
  </nav>
);
