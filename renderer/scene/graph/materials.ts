import type { Material, ShaderMaterial } from "three";
import { flatMaterial } from "../material/flat.ts";
import { chosenLines, chosenMask, lineMaterial } from "../material/lines.ts";
import { sectionMaterial } from "../material/section.ts";
import { shadowMaterial } from "../material/shadow.ts";
import { surfaceMaterial } from "../material/surface.ts";
import { applyPalette, type SharedUniforms, sharedUniforms } from "../material/uniforms.ts";
import type { Palette, Rgb } from "../palette.ts";

/** All materials of a scene. They outlive a rebuild for other teeth, so that nothing is compiled twice. */
export interface SceneMaterials {
  readonly uniforms: SharedUniforms;
  readonly surface: ShaderMaterial;
  readonly lines: ShaderMaterial;
  readonly mask: ShaderMaterial;
  readonly chosen: ShaderMaterial;
  readonly sunSection: ShaderMaterial;
  readonly ringSection: ShaderMaterial;
  readonly floor: ShaderMaterial;
  readonly shadow: ShaderMaterial;
  readonly flat: ShaderMaterial;
}

/** Makes them. */
export function sceneMaterials(): SceneMaterials {
  const uniforms = sharedUniforms();
  const surface = surfaceMaterial(uniforms);
  return {
    uniforms,
    surface,
    lines: lineMaterial(uniforms),
    mask: chosenMask(surface),
    chosen: chosenLines(uniforms),
    sunSection: sectionMaterial(uniforms, false),
    ringSection: sectionMaterial(uniforms, false),
    floor: sectionMaterial(uniforms, true),
    shadow: shadowMaterial(),
    flat: flatMaterial(),
  };
}

/** Every material in them. */
export const allMaterials = ({ uniforms: _, ...materials }: SceneMaterials): Material[] =>
  Object.values(materials);

/** Sets one value of a material's own. */
export function setUniform(material: ShaderMaterial, name: string, value: unknown): void {
  const uniform = material.uniforms[name];
  if (uniform !== undefined) uniform.value = value;
}

/** Recolours everything. */
export function paint(materials: SceneMaterials, palette: Palette): void {
  applyPalette(materials.uniforms, palette);
  const sections: readonly (readonly [ShaderMaterial, "sun" | "ring"])[] = [
    [materials.sunSection, "sun"],
    [materials.ringSection, "ring"],
    [materials.floor, "ring"],
  ];
  for (const [material, colour] of sections) {
    setUniform(material, "ground", copy(palette.sections[colour].ground));
    setUniform(material, "line", copy(palette.sections[colour].line));
  }
  setUniform(materials.shadow, "colour", copy(palette.shadow));
  setUniform(materials.shadow, "strength", palette.shadowStrength);
}

const copy = (colour: Rgb): number[] => [...colour];
