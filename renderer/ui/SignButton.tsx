interface SignButtonProps {
  /** one sign or a short word */
  readonly sign: string;
  /** what it does, read aloud and shown under the pointer */
  readonly name: string;
  readonly disabled?: boolean;
  readonly onClick: () => void;
}

/** A quiet button of one sign. */
export const SignButton = ({ sign, name, disabled = false, onClick }: SignButtonProps) => (
  <button
    type="button"
    class="btn quiet"
    aria-label={name}
    title={name}
    disabled={disabled}
    onClick={onClick}
  >
    {sign}
  </button>
);
