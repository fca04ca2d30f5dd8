import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../texts/catalogue.ts";
import { Icon } from "./icons.tsx";

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A window over the sheet. The browser keeps the focus inside, gives it back, and closes it with Esc. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog ref={ref} class="dialog" aria-labelledby="dialog-title" onCancel={onClose}>
      <header>
        <h2 id="dialog-title">{title}</h2>
        <button type="button" class="btn quiet" onClick={onClose}>
          <Icon name="close" /> {t.close}
        </button>
      </header>
      <div class="dialog-body">{children}</div>
    </dialog>
  );
}
