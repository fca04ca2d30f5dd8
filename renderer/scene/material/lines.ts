import {
  AlwaysStencilFunc,
  KeepStencilOp,
  NotEqualStencilFunc,
  ReplaceStencilOp,
  ShaderMaterial,
} from "three";
import { CUT_GLSL } from "./cut.glsl.ts";
import { LINE_COLOURS, type SharedUniforms } from "./uniforms.ts";

/**
 * A line is a strip two corners wide, spread on the screen to its weight. A line with a radius is the contour of a
 * cylinder: it is laid where the cylinder turns away from the eye, whatever way it has turned.
 */
const VERTEX = /* glsl */ `
attribute vec3 lineFrom;
attribute vec3 lineTo;
attribute vec3 lineRound; // centre, signed radius
attribute vec4 lineStyle; // weight, part, cut, colour
uniform vec2 viewport;
uniform float lineScale;
uniform float extra;
uniform float lift;
varying vec3 vPlace;
varying float vCut;
varying float vColour;
varying float vPart;
void main() {
  vec3 a = lineFrom;
  vec3 b = lineTo;
  if (lineRound.z != 0.0) {
    vec2 eye = (transpose(mat3(modelViewMatrix)) * vec3(0.0, 0.0, 1.0)).xy;
    vec2 side = length(eye) < 1e-4 ? vec2(1.0, 0.0) : normalize(vec2(-eye.y, eye.x));
    a.xy = lineRound.xy + side * lineRound.z;
    b.xy = a.xy;
  }
  vec4 viewA = modelViewMatrix * vec4(a, 1.0);
  vec4 viewB = modelViewMatrix * vec4(b, 1.0);
  vec4 clipA = projectionMatrix * (viewA + vec4(0.0, 0.0, lift, 0.0));
  vec4 clipB = projectionMatrix * (viewB + vec4(0.0, 0.0, lift, 0.0));
  vec2 along = (clipB.xy - clipA.xy) * viewport;
  float far = length(along);
  along = far < 1e-3 ? vec2(1.0, 0.0) : along / far;
  float wide = 0.5 * (lineStyle.x * lineScale + extra);
  vec2 shift = vec2(-along.y, along.x) * position.y * wide + along * (position.x * 2.0 - 1.0) * 0.4 * wide;
  vec4 clip = mix(clipA, clipB, position.x);
  clip.xy += shift * 2.0 / viewport;
  vPlace = (modelMatrix * vec4(mix(a, b, position.x), 1.0)).xyz;
  vCut = lineStyle.z;
  vColour = lineStyle.w;
  vPart = lineStyle.y;
  gl_Position = clip;
}
`;

const FRAGMENT = /* glsl */ `
uniform vec3 lineColours[${LINE_COLOURS.length}];
uniform float marks;
uniform float onlyPart;
uniform vec3 own;
uniform float useOwn;
varying vec3 vPlace;
varying float vCut;
varying float vColour;
varying float vPart;
${CUT_GLSL}
void main() {
  if (isCutAway(vCut, vPlace)) discard;
  if (marks < 0.5 && abs(vColour - ${LINE_COLOURS.indexOf("mark")}.0) < 0.5) discard;
  if (onlyPart >= 0.0 && abs(vPart - onlyPart) > 0.5) discard;
  gl_FragColor = vec4(useOwn > 0.5 ? own : lineColours[int(vColour + 0.5)], 1.0);
}
`;

/** How far lines are lifted toward the eye off the surface they are drawn on, units of length. */
const LIFT = 0.3;

/** Value by which the chosen part is marked in the stencil. */
const CHOSEN = 1;

/** The material of all edges. */
export const lineMaterial = (uniforms: SharedUniforms): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: {
      ...uniforms,
      extra: { value: 0 },
      lift: { value: LIFT },
      own: { value: [0, 0, 0] },
      useOwn: { value: 0 },
      onlyPart: { value: -1 },
    },
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    // Lines are lifted off their surface: with depth of their own they would hide the chosen part's mask.
    depthWrite: false,
  });

/** Marks the chosen part's surface in the stencil without drawing it. */
export function chosenMask(surface: ShaderMaterial): ShaderMaterial {
  const mask = surface.clone();
  mask.uniforms = { ...surface.uniforms, onlyPart: { value: -1 } };
  mask.colorWrite = false;
  mask.depthWrite = false;
  mask.polygonOffset = true;
  mask.polygonOffsetFactor = -1;
  mask.polygonOffsetUnits = -8;
  mask.stencilWrite = true;
  mask.stencilRef = CHOSEN;
  mask.stencilFunc = AlwaysStencilFunc;
  mask.stencilZPass = ReplaceStencilOp;
  return mask;
}

/** Draws the chosen part's lines wide and in its colour, outside its own surface only: an outline round it. */
export function chosenLines(uniforms: SharedUniforms): ShaderMaterial {
  const lines = lineMaterial(uniforms);
  lines.uniforms.useOwn = { value: 1 };
  lines.uniforms.lift = { value: 3 * LIFT };
  lines.stencilWrite = true;
  lines.stencilRef = CHOSEN;
  lines.stencilFunc = NotEqualStencilFunc;
  lines.stencilFail = KeepStencilOp;
  lines.stencilZFail = KeepStencilOp;
  lines.stencilZPass = KeepStencilOp;
  return lines;
}
