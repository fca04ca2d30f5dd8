/** A time of a drive: 5:10.5, or 1:02:03.4 from an hour on. @param seconds ≥ 0 */
export function clockTime(seconds: number, decimals = 1): string {
  const unit = 10 ** decimals;
  const whole = Math.round(Math.max(0, seconds) * unit) / unit;
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = (whole % 60).toFixed(decimals).padStart(decimals > 0 ? 3 + decimals : 2, "0");
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, "0")}:${rest}` : `${minutes}:${rest}`;
}
