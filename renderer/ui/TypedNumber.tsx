import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Parsed } from "../state/parse.ts";

interface TypedNumberProps {
  readonly name: string;
  readonly shown: string;
  readonly className: string;
  readonly parse: (text: string) => Parsed;
  readonly onValue: (value: number) => void;
  /** arrow, page and Home keys while nothing new is typed */
  readonly onKey: (event: KeyboardEvent) => void;
  readonly reasons: Readonly<Record<"notNumber" | "unknownUnit" | "roadNeedsRing", string>>;
  readonly point?: string;
}

/** A number that can be typed, with or without a unit. Enter takes it, Esc leaves it as it was. */
export function TypedNumber(props: TypedNumberProps) {
  const { name, shown, className, parse, onValue, onKey, reasons } = props;
  // Keys may come before the last letter is drawn, so what is typed is kept beside what is shown.
  const typed = useRef<string | null>(null);
  const [draft, show] = useState<string | null>(null);
  const setDraft = (text: string | null): void => {
    typed.current = text;
    show(text);
  };
  const [fault, setFault] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  // From Enter to the next letter; a late picture must not select what is being typed by then.
  const selects = useRef(false);
  useEffect(() => setFault(null), [shown]);
  const take = (): void => {
    if (typed.current === null) return;
    const read = parse(typed.current);
    if (!read.ok) {
      setFault(reasons[read.reason]);
      return;
    }
    setDraft(null);
    setFault(null);
    onValue(read.value);
  };
  const leave = (): void => {
    setDraft(null);
    setFault(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Enter") {
      take();
      selects.current = true;
      input.current?.select();
    } else if (event.key === "Escape" && typed.current !== null) {
      event.stopPropagation();
      leave();
    } else if (["ArrowUp", "ArrowDown", "PageUp", "PageDown"].includes(event.key)) onKey(event);
    else if (event.key === "Home" && typed.current === null) onKey(event);
  };
  const text = draft ?? shown;
  useLayoutEffect(() => {
    // Selecting takes the focus along, which may have gone on by then.
    if (selects.current && document.activeElement === input.current) input.current?.select();
  }, [text]);
  return (
    <span class={`typed ${className}`}>
      <input
        ref={input}
        type="text"
        inputMode="text"
        autocomplete="off"
        spellcheck={false}
        aria-label={name}
        aria-invalid={fault !== null}
        data-point={props.point}
        size={Math.max(3, text.length)}
        value={text}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => {
          selects.current = false;
          setDraft(event.currentTarget.value);
        }}
        onKeyDown={onKeyDown}
        onBlur={() => {
          selects.current = false;
          if (typed.current !== null && parse(typed.current).ok) take();
          else leave();
        }}
      />
      {fault && (
        <span class="fault" role="alert">
          {fault}
        </span>
      )}
    </span>
  );
}
