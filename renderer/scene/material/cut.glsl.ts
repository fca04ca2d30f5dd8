/**
 * Sectors taken out of a body, by class: 1 ring, 2 sun machine, 3 output machine. Class 0 is never cut; a negative
 * class is seen only inside its sector. Places are those of the whole scene.
 */
export const CUT_GLSL = /* glsl */ `
uniform vec4 cuts[8]; // of each class: axis x, y, middle x, y; then cosine of its half, floor

bool isCutAway(float cutClass, vec3 place) {
  int index = int(abs(cutClass) + 0.5);
  if (index == 0) return false;
  vec4 sector = cuts[2 * index];
  vec4 reach = cuts[2 * index + 1];
  vec2 out2 = place.xy - sector.xy;
  bool within = dot(out2, sector.zw) > reach.x * length(out2);
  if (cutClass < 0.0) return !within;
  return within && place.z > reach.y;
}
`;
