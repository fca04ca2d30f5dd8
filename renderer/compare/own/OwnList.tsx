import { OWN_LIMITS } from "../../../sim/control/own/contract.ts";
import { OWN_EXAMPLES } from "../../../sim/control/own/examples/registry.ts";
import { tell } from "../../app/window.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { num } from "../../state/format.ts";
import { MOST_TITLE, ownStrategies } from "../../state/own-strategies.ts";
import { t } from "../../texts/catalogue.ts";
import { FilePick } from "../../ui/FilePick.tsx";
import { Icon } from "../../ui/icons.tsx";
import {
  addStrategy,
  bringBack,
  dropStrategy,
  duplicateStrategy,
  openStrategy,
  renameStrategy,
  saveStrategy,
} from "./actions.ts";
import { dropped, edited, editedStrategy } from "./state.ts";

const c = t.compare.own;

/** The strategies there are; one of them is in hand. */
const List = () => (
  <ul class="own-list" aria-label={c.list}>
    {ownStrategies.value.map(({ title }) => (
      <li key={title}>
        <button
          type="button"
          aria-current={editedStrategy.value?.title === title ? "true" : undefined}
          onClick={() => {
            edited.value = title;
          }}
        >
          {title}
        </button>
      </li>
    ))}
  </ul>
);

/** What can be done with the one in hand. */
function InHand() {
  const one = editedStrategy.value;
  if (!one) return null;
  return (
    <div class="own-hand">
      <label class="own-name">
        <span>{c.title}</span>
        <input
          key={one.title}
          type="text"
          maxLength={MOST_TITLE}
          defaultValue={one.title}
          onChange={(event) => {
            renameStrategy(event.currentTarget.value);
            event.currentTarget.value = editedStrategy.value?.title ?? "";
          }}
        />
      </label>
      <button type="button" class="btn quiet" onClick={duplicateStrategy}>
        <Icon name="list" /> {c.duplicate}
      </button>
      <button type="button" class="btn quiet" onClick={() => void saveStrategy()}>
        <Icon name="save" /> {c.save}
      </button>
      <button type="button" class="btn quiet" onClick={dropStrategy}>
        <Icon name="close" /> {c.drop}
      </button>
    </div>
  );
}

/** View A: the own strategies of the project, and how a new one begins. */
export const OwnList = () => (
  <section class="view o-list" aria-labelledby="view-a">
    <ViewHead id="view-a" tag="A" title={c.list} sub="" />
    <div class="own-side">
      {ownStrategies.value.length === 0 ? <p class="unit">{c.none}</p> : <List />}
      <InHand />
      {dropped.value && (
        <button type="button" class="btn" onClick={bringBack}>
          <Icon name="undo" /> {c.bringBack(dropped.value.own.title)}
        </button>
      )}
      <fieldset class="own-new">
        <legend>{c.begin}</legend>
        {OWN_EXAMPLES.map(({ id, title, about, text }) => (
          <button
            key={id}
            type="button"
            class="btn quiet"
            title={about}
            onClick={() => addStrategy(title, text)}
          >
            <Icon name="more" /> {title}
          </button>
        ))}
        <button type="button" class="btn quiet" title={c.emptyAbout} onClick={() => addStrategy(c.empty)}>
          <Icon name="more" /> {c.empty}
        </button>
        <FilePick
          name={c.open}
          accept=".js,.mjs,text/javascript"
          most={4 * OWN_LIMITS.source}
          onText={openStrategy}
          onTooLarge={(name) => tell(c.tooLarge(name, num(OWN_LIMITS.source)), true)}
        />
      </fieldset>
    </div>
  </section>
);
