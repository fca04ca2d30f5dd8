import { ShaderMaterial } from "three";
import { TONES } from "../tones.ts";
import { CUT_GLSL } from "./cut.glsl.ts";
import type { SharedUniforms } from "./uniforms.ts";

const VERTEX = /* glsl */ `
attribute vec4 kind; // tone, light, part, cut
varying vec3 vNormal;
varying vec3 vView;
varying vec3 vPlace;
varying float vLight;
// Whole numbers must not be carried between corners: on slivers that goes astray.
flat varying vec3 vKind; // tone, part, cut
void main() {
  vec4 own = vec4(position, 1.0);
  vec3 turned = normal;
  #ifdef USE_INSTANCING
    own = instanceMatrix * own;
    turned = mat3(instanceMatrix) * turned;
  #endif
  vNormal = normalMatrix * turned;
  vLight = kind.y;
  vKind = kind.xzw;
  vPlace = (modelMatrix * own).xyz;
  vec4 view = modelViewMatrix * own;
  vView = view.xyz;
  gl_Position = projectionMatrix * view;
}
`;

/**
 * Soft matte metal, shaded as a draughtsman tints: away from the light the dark colour, facing it the bright one, and
 * the face colour between. One large key light at the upper left, near enough that flat faces fade across, and a weak
 * fill from the right; a wide soft gloss of roughness 0.6 on a base of metalness 0.35.
 */
const FRAGMENT = /* glsl */ `
uniform vec3 metals[${3 * TONES.length}];
uniform float hovered;
uniform float marks;
uniform float onlyPart;
uniform float reach;
uniform vec3 middle;
varying vec3 vNormal;
varying vec3 vView;
varying vec3 vPlace;
varying float vLight;
// Whole numbers must not be carried between corners: on slivers that goes astray.
flat varying vec3 vKind; // tone, part, cut
${CUT_GLSL}
const vec3 KEY = vec3(-1.5, 1.95, 2.2);
const vec3 FILL = normalize(vec3(0.9, -0.1, 0.42));
const vec3 EYE = vec3(0.0, 0.0, 1.0);
const float ROUGH = 0.36; // roughness 0.6 squared
void main() {
  if (isCutAway(vKind.z, vPlace)) discard;
  if (onlyPart >= 0.0 && abs(vKind.y - onlyPart) > 0.5) discard;
  if (marks < 0.5 && abs(vKind.x - ${TONES.indexOf("paint")}.0) < 0.5) discard;
  int tone = 3 * int(vKind.x + 0.5);
  vec3 face = metals[tone];
  vec3 hi = metals[tone + 1];
  vec3 lo = metals[tone + 2];
  vec3 n = normalize(vNormal);
  vec3 key = normalize(KEY - 0.75 * (vView - middle) / reach);
  float wrap = clamp(0.62 * dot(n, key) + 0.38, 0.0, 1.0);
  float amount = wrap + 0.16 * max(dot(n, FILL), 0.0);
  vec3 colour = mix(lo, face, smoothstep(0.0, 0.6, amount));
  colour = mix(colour, hi, smoothstep(0.64, 1.12, amount));
  vec3 halfway = normalize(key + EYE);
  float across = max(dot(n, halfway), 0.0);
  float lobe = across * across * (ROUGH * ROUGH - 1.0) + 1.0;
  float gloss = (ROUGH * ROUGH) / (lobe * lobe);
  colour += 0.07 * gloss * mix(vec3(1.0), hi, 0.35);
  float light = vLight;
  colour = mix(mix(lo, vec3(0.0), 0.28), colour, clamp(light, 0.0, 1.0));
  if (abs(vKind.y - hovered) < 0.5) colour = mix(colour, vec3(1.0), 0.14);
  gl_FragColor = vec4(min(colour, 1.0), 1.0);
}
`;

/** The one material of all solid parts. */
export const surfaceMaterial = (uniforms: SharedUniforms): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { ...uniforms, onlyPart: { value: -1 } },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
  });
