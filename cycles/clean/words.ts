/** A length of time as people read it: `45 s`, `12 min 5 s`, `3 h 2 min`. @param seconds 0 or more */
export function clockText(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min ${whole % 60} s`;
  return `${Math.floor(whole / 3600)} h ${Math.floor((whole % 3600) / 60)} min`;
}

/** A number with at most so many decimals, without trailing zeros. */
export const short = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)));
