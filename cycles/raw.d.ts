/** A table taken into the bundle as text, unchanged. */
declare module "*.csv?raw" {
  const text: string;
  export default text;
}
