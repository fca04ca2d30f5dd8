/** The outcome of one geometric check with the two numbers compared: it passes when value ≥ limit. */
export interface Check {
  readonly pass: boolean;
  readonly value: number;
  readonly limit: number;
}

/** Compares once. `strict` asks for value > limit. */
export const compare = (value: number, limit: number, strict = false): Check => ({
  pass: strict ? value > limit : value >= limit,
  value,
  limit,
});
