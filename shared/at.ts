/**
 * Reads one element of a typed array or list, or throws. It costs nothing in a hot loop and turns a wrong index
 * into an error with its place instead of a silent not-a-number.
 * @param array what to read from
 * @param index whole number, 0 … length − 1
 * @throws RangeError naming index and length
 */
export function at(array: Float64Array, index: number): number;
export function at<T>(array: ArrayLike<T>, index: number): T;
export function at<T>(array: ArrayLike<T>, index: number): T {
  const value = array[index];
  if (value === undefined) throw new RangeError(`index ${index} outside 0 … ${array.length - 1}`);
  return value;
}
