import type { ComponentChildren } from "preact";
import { toggleWorking, type WorkingId, working } from "../state/working.ts";
import { workingTitle } from "./working-title.ts";

interface NumberProps {
  readonly id: WorkingId;
  readonly className?: string;
  readonly children: ComponentChildren;
}

/** A number that answers: a press shows its working. Read aloud it says which number it is. */
export const Answering = ({ id, className = "", children }: NumberProps) => (
  <button
    type="button"
    class={`number ${className}`}
    data-point={id}
    aria-expanded={working.value === id}
    onClick={() => toggleWorking(id)}
  >
    <span class="unseen">{workingTitle(id)} </span>
    {children}
  </button>
);
