import { APP_PAGE } from "./origin.ts";

/**
 * Whether a window may go to an address: only the page itself may be loaded again, with its own fragment.
 * @param address where the page, a link or a redirect wants to go
 */
export function mayNavigate(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const url = new URL(address);
  url.hash = "";
  return url.href === APP_PAGE;
}

/** Answer to every page that asks for a new window. */
export const NEW_WINDOW = { action: "deny" } as const;

/** Whether a page gets a permission (camera, place, clipboard, devices …): none does, whoever asks. */
export const mayUse = (_permission: string): boolean => false;
