import { useId } from "preact/hooks";

interface FieldProps {
  readonly label: string;
  /** with what it belongs to, for readers */
  readonly name: string;
  readonly unit: string;
  readonly value: string;
  /** what is wrong; empty: nothing */
  readonly fault: string;
  readonly onValue: (text: string) => void;
}

/** A typed number with its unit, and what is wrong with it under it. */
export function NumberField({ label, name, unit, value, fault, onValue }: FieldProps) {
  const id = useId();
  return (
    <span class="numberfield">
      <span aria-hidden="true">{label}</span>
      <span class="value">
        <input
          type="text"
          inputMode="decimal"
          aria-label={name}
          value={value}
          aria-invalid={fault !== ""}
          aria-describedby={id}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
        <span class="unit" id={id}>
          {unit}
          {fault && <span class="bad"> {fault}</span>}
        </span>
      </span>
    </span>
  );
}
