import { ShaderMaterial } from "three";

const VERTEX = /* glsl */ `
varying vec2 vPlace;
void main() {
  vPlace = position.xz;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

/** Shade under a body that stands on the sheet: an ellipse, even in the middle and fading out. */
const FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float strength;
uniform vec4 boxes[3]; // centre x, z, half width, half depth
uniform float softness[3];
varying vec2 vPlace;
void main() {
  float shade = 0.0;
  for (int i = 0; i < 3; i += 1) {
    if (boxes[i].z <= 0.0) continue;
    float far = length((vPlace - boxes[i].xy) / boxes[i].zw);
    float part = 1.0 - smoothstep(1.0 - softness[i], 1.0 + softness[i], far);
    shade = shade + part - shade * part;
  }
  gl_FragColor = vec4(colour, strength * shade);
}
`;

/** Material of the contact shadow. */
export const shadowMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: {
      colour: { value: [0, 0, 0] },
      strength: { value: 0.2 },
      boxes: { value: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0] },
      softness: { value: [1, 1, 1] },
    },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: true,
    depthWrite: false,
  });
