import { DoubleSide, ShaderMaterial } from "three";

const VERTEX = /* glsl */ `
attribute vec3 colour;
varying vec3 vColour;
void main() {
  vColour = colour;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

const FRAGMENT = /* glsl */ `
varying vec3 vColour;
void main() {
  gl_FragColor = vec4(vColour, 1.0);
}
`;

/** Plain colour by vertex, for what is drawn on the sheet: arrows and the index. */
export const flatMaterial = (): ShaderMaterial =>
  new ShaderMaterial({ vertexShader: VERTEX, fragmentShader: FRAGMENT, side: DoubleSide });
