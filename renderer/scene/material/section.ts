import { DoubleSide, ShaderMaterial } from "three";
import { CUT_GLSL } from "./cut.glsl.ts";
import type { SharedUniforms } from "./uniforms.ts";

const VERTEX = /* glsl */ `
attribute vec2 plane; // coordinates in the plane of the cut
attribute vec2 hatch; // pattern (0 section, 1 windings), cut class
varying vec2 vPlane;
varying vec2 vHatch;
varying vec3 vPlace;
void main() {
  vPlane = plane;
  vHatch = hatch;
  vPlace = (modelMatrix * vec4(position, 1.0)).xyz;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

/** Section hatch at 45° for metal, lines along the current for windings: the patterns of all the sheets. */
const FRAGMENT = /* glsl */ `
uniform vec3 ground;
uniform vec3 line;
uniform float pixelsPerUnit;
uniform float hatchPitch;
uniform float hatchWidth;
uniform float worldHatch;
varying vec2 vPlane;
varying vec2 vHatch;
varying vec3 vPlace;
${CUT_GLSL}
void main() {
  if (isCutAway(vHatch.y, vPlace)) discard;
  vec2 on = worldHatch > 0.5 ? vPlace.xy : vPlane;
  float across = vHatch.x > 0.5 ? on.y : dot(on, vec2(0.70711, -0.70711));
  float pixels = across * pixelsPerUnit;
  // On a slanting plane lines come closer than they are drawn: the width follows, so that they never run together.
  float slope = clamp(fwidth(pixels), 0.3, 3.0);
  float apart = abs(fract(pixels / hatchPitch) - 0.5) * hatchPitch;
  float ink = 1.0 - smoothstep(0.5 * hatchWidth * slope - 0.5 * slope, 0.5 * hatchWidth * slope + 0.5 * slope, apart);
  gl_FragColor = vec4(mix(ground, line, ink), 1.0);
}
`;

/** Material of the cut faces of one shaft's parts. */
export const sectionMaterial = (uniforms: SharedUniforms, flat: boolean): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: {
      ...uniforms,
      ground: { value: [1, 1, 1] },
      line: { value: [0, 0, 0] },
      worldHatch: { value: flat ? 1 : 0 },
    },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: DoubleSide,
  });
