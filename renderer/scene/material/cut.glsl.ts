/**
 * Sectors taken out of a body, by class: 1 ring, 2 sun machine, 3 output machine. Class 0 is never cut; a negative
 * class is seen only inside its sector. Places are those of the whole scene.
 */
export const CUT_GLSL = /* glsl */ `
uniform vec2 cutAxis[4];
uniform vec2 cutMiddle[4];
uniform float cutCosine[4];
uniform float cutFloor[4];

bool isCutAway(float cutClass, vec3 place) {
  int index = int(abs(cutClass) + 0.5);
  if (index == 0) return false;
  vec2 out2 = place.xy - cutAxis[index];
  float along = dot(out2, cutMiddle[index]);
  bool inside = along > cutCosine[index] * length(out2) && place.z > cutFloor[index];
  if (cutClass < 0.0) return !(along > cutCosine[index] * length(out2));
  return inside;
}
`;
