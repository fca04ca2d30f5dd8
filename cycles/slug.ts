/**
 * Makes an id of lower-case letters, digits and hyphens.
 * @param text any text; accents are dropped, everything else becomes a hyphen
 * @param fallback taken when nothing is left
 */
export function slug(text: string, fallback: string): string {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const id = plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return id === "" ? fallback : id;
}
