/**
 * Reads one element of a list or typed array, or throws: a wrong index becomes an error with its place instead of a
 * silent not-a-number.
 * @param array what to read from
 * @param index whole number, 0 … length − 1
 * @throws RangeError naming index and length
 */
export function at<T>(array: ArrayLike<T>, index: number): T {
  const value = array[index];
  if (value === undefined) throw new RangeError(`index ${index} outside 0 … ${array.length - 1}`);
  return value;
}

/**
 * The same for the time loop. Only ever given Float64Arrays, so that the runtime can turn it into one load: `at`, which
 * sees arrays of every kind, costs some 20 ns a call there.
 */
export function realAt(array: Float64Array, index: number): number {
  const value = array[index];
  if (value === undefined) throw new RangeError(`index ${index} outside 0 … ${array.length - 1}`);
  return value;
}
