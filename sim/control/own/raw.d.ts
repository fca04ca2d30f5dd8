/** A script taken into the bundle as text, unchanged. */
declare module "*.js?raw" {
  const text: string;
  export default text;
}
