/**
 * A typed time in s: "90", "90 s", "1:30", "1:02:03.5"; a decimal comma counts.
 * @returns null for anything else, and for a negative one
 */
export function parseClock(text: string): number | null {
  const plain = text.trim().replace(",", ".").replace(/\s*s$/i, "");
  const parts = plain.split(":");
  if (parts.length > 3 || !parts.every((part) => /^\d+(\.\d+)?$/.test(part))) return null;
  if (parts.slice(0, -1).some((part) => part.includes("."))) return null;
  const numbers = parts.map(Number);
  if (numbers.slice(1).some((part) => part >= 60)) return null;
  return numbers.reduce((sum, part) => sum * 60 + part, 0);
}
