import { useRef } from "preact/hooks";
import { Icon } from "./icons.tsx";

interface FilePickProps {
  readonly name: string;
  /** as of `<input accept>` */
  readonly accept: string;
  readonly onText: (text: string, fileName: string) => void;
  /** bytes above which the file is not read; default 64 MiB */
  readonly most?: number;
  readonly onTooLarge: (fileName: string, bytes: number, most: number) => void;
}

const MOST = 64 * 1024 * 1024;

/** A button that lets a person choose a file and reads its text. */
export function FilePick({ name, accept, onText, most = MOST, onTooLarge }: FilePickProps) {
  const input = useRef<HTMLInputElement>(null);
  const read = async (file: File): Promise<void> => {
    if (file.size > most) onTooLarge(file.name, file.size, most);
    else onText(await file.text(), file.name);
  };
  return (
    <>
      <button type="button" class="btn quiet" onClick={() => input.current?.click()}>
        <Icon name="open" /> {name}
      </button>
      <input
        ref={input}
        type="file"
        class="unseen"
        tabIndex={-1}
        aria-hidden="true"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (file) void read(file);
        }}
      />
    </>
  );
}
