import { preferences } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Dialog } from "../ui/Dialog.tsx";
import { SettingsForm } from "./SettingsForm.tsx";
import { openWindow } from "./window.ts";

const Rows = ({ rows }: { rows: readonly (readonly [string, string])[] }) => (
  <tbody>
    {rows.map(([key, does]) => (
      <tr key={key}>
        <th scope="row">
          <kbd>{key}</kbd>
        </th>
        <td>{does}</td>
      </tr>
    ))}
  </tbody>
);

const Keys = () => (
  <>
    <table class="keytable">
      <thead>
        <tr>
          {t.keys.columns.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <Rows rows={t.keys.rows} />
      <Rows rows={t.keys.single} />
    </table>
    {!preferences.value.singleKeys && <p>{t.keys.singleOff}</p>}
  </>
);

const Glossary = () => (
  <>
    <dl class="glossary">
      {t.glossary.map(([term, meaning]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
    <p class="caution">{t.caution}</p>
  </>
);

/** The open window, if any. */
export function Windows() {
  const close = (): void => {
    openWindow.value = null;
  };
  switch (openWindow.value) {
    case "settings":
      return (
        <Dialog title={t.settings.title} onClose={close}>
          <SettingsForm />
        </Dialog>
      );
    case "keys":
      return (
        <Dialog title={t.keys.title} onClose={close}>
          <Keys />
        </Dialog>
      );
    case "glossary":
      return (
        <Dialog title={t.glossaryTitle} onClose={close}>
          <Glossary />
        </Dialog>
      );
    default:
      return null;
  }
}
