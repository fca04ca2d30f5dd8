import { signal } from "@preact/signals";

/** Sizes that drawings take from the style sheet, px. */
export interface Metrics {
  readonly text: number;
  readonly name: number;
  readonly speed: number;
  readonly target: number;
  /** below 1400 px: short names, no subtitles */
  readonly compact: boolean;
  readonly mech: number;
  readonly elec: number;
  readonly limit: number;
}

const read = (): Metrics => {
  const style = getComputedStyle(document.documentElement);
  const px = (name: string): number => Number.parseFloat(style.getPropertyValue(name));
  return {
    text: px("--fs-1"),
    name: px("--fs-2"),
    speed: px("--fs-4"),
    target: px("--target"),
    compact: window.innerWidth < 1400,
    mech: px("--pat-mech-pitch"),
    elec: px("--pat-elec-pitch"),
    limit: px("--pat-limit-pitch"),
  };
};

/** The sizes now; read again after every change of window, theme or mode. */
export const metrics = signal<Metrics>({
  text: 14,
  name: 16,
  speed: 28,
  target: 28,
  compact: false,
  mech: 6,
  elec: 5,
  limit: 5,
});

export const readMetrics = (): void => {
  metrics.value = read();
};
