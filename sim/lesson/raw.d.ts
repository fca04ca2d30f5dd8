/** A lesson taken into the bundle as text, unchanged. */
declare module "*.md?raw" {
  const text: string;
  export default text;
}
