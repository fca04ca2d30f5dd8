/** The scheme under which the program's own files are found. */
export const SCHEME = "app";

/** The only host of that scheme. */
export const HOST = "trishaft";

/** Where our page comes from. */
export const APP_ORIGIN = `${SCHEME}://${HOST}`;

/** The page. */
export const APP_PAGE = `${APP_ORIGIN}/index.html`;

/**
 * Origin of an address, parsed and never guessed from how it begins. For schemes that the address standard does not
 * know, `URL.origin` says "null" for all of them alike, so those are compared by scheme and host.
 * @returns null for what is no address or has no host
 */
export function originOf(address: string): string | null {
  if (!URL.canParse(address)) return null;
  const url = new URL(address);
  if (url.origin !== "null") return url.origin;
  return url.host === "" ? null : `${url.protocol}//${url.host}`;
}

/** Whether an address belongs to the program. */
export const isOurs = (address: string): boolean => originOf(address) === APP_ORIGIN;
