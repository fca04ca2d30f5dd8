/** A typed number; a decimal comma and a true minus count; null for what is none. */
export function readNumber(text: string): number | null {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  const value = Number(plain);
  return plain !== "" && Number.isFinite(value) ? value : null;
}
