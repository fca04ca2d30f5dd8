import { useRef } from "preact/hooks";

interface TabsProps<Id extends string> {
  readonly name: string;
  readonly tabs: readonly { readonly id: Id; readonly title: string }[];
  readonly chosen: Id;
  readonly onChoose: (id: Id) => void;
  /** id of the panel; the tabs' own ids begin with it (`tabIdOf`) */
  readonly panel: string;
}

const STEP: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** Id of a tab, by which its panel names itself. */
export const tabIdOf = (panel: string, id: string): string => `${panel}-tab-${id}`;

/** A list of tabs over one panel: arrows, Home and End choose; one of them takes the focus. */
export function Tabs<Id extends string>({ name, tabs, chosen, onChoose, panel }: TabsProps<Id>) {
  const list = useRef<HTMLDivElement>(null);
  const choose = (id: Id): void => {
    onChoose(id);
    list.current?.querySelector<HTMLElement>(`#${tabIdOf(panel, id)}`)?.focus();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const index = tabs.findIndex(({ id }) => id === chosen);
    const step = STEP[event.key];
    const next =
      step !== undefined
        ? tabs[(index + step + tabs.length) % tabs.length]
        : event.key === "Home"
          ? tabs[0]
          : event.key === "End"
            ? tabs.at(-1)
            : undefined;
    if (!next) return;
    event.preventDefault();
    event.stopPropagation();
    choose(next.id);
  };
  return (
    <div class="tabs" role="tablist" aria-label={name} ref={list} onKeyDown={onKeyDown}>
      {tabs.map(({ id, title }) => (
        <button
          key={id}
          id={tabIdOf(panel, id)}
          type="button"
          role="tab"
          aria-selected={id === chosen}
          aria-controls={panel}
          tabIndex={id === chosen ? 0 : -1}
          onClick={() => choose(id)}
        >
          {title}
        </button>
      ))}
    </div>
  );
}
