/** What a surface is made of, as far as its colour goes. The order is the number the shaders know it by. */
export const TONES = [
  "sun",
  "planet",
  "carrier",
  "ring",
  "bearing",
  "paint",
  "sun winding",
  "ring winding",
  "magnet",
  "tyre",
  "key",
] as const;

/** One of {@link TONES}. */
export type Tone = (typeof TONES)[number];
