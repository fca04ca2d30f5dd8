import { useEffect } from "preact/hooks";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { notice } from "./window.ts";

/** How long a plain notice stays, ms; a grave one stays until it is dismissed. */
const STAYS = 6000;

/** The last notice, under the top bar. */
export function Notice() {
  const now = notice.value;
  useEffect(() => {
    if (!now || now.grave) return;
    const timer = window.setTimeout(() => {
      if (notice.value === now) notice.value = null;
    }, STAYS);
    return () => window.clearTimeout(timer);
  }, [now]);
  return (
    <div class="notice-place" role="status">
      {now && (
        <div class={`notice ${now.grave ? "grave" : ""}`}>
          <span>{now.text}</span>
          <button
            type="button"
            class="iconbtn"
            aria-label={t.notice.dismiss}
            onClick={() => (notice.value = null)}
          >
            <Icon name="close" />
          </button>
        </div>
      )}
    </div>
  );
}
