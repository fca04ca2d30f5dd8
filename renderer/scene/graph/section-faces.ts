import { BufferAttribute, BufferGeometry, Mesh, type ShaderMaterial } from "three";
import { at } from "../../../shared/at.ts";
import type { CutFace } from "../view/sections.ts";
import type { FreeLine } from "./buffers.ts";
import { unculled } from "./node.ts";

/** The cut faces of one colour: a small mesh that is written anew whenever the cut or the ring's teeth move. */
export class SectionFaces {
  readonly mesh: Mesh;
  private readonly geometry = new BufferGeometry();

  constructor(material: ShaderMaterial, corners: number) {
    this.geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * corners), 3));
    this.geometry.setAttribute("plane", new BufferAttribute(new Float32Array(2 * corners), 2));
    this.geometry.setAttribute("hatch", new BufferAttribute(new Float32Array(2 * corners), 2));
    this.geometry.setDrawRange(0, 0);
    this.mesh = unculled(new Mesh(this.geometry, material));
  }

  /** Writes the faces as fans of triangles. */
  write(faces: readonly CutFace[]): void {
    const position = this.geometry.getAttribute("position");
    const plane = this.geometry.getAttribute("plane");
    const hatch = this.geometry.getAttribute("hatch");
    let corner = 0;
    for (const face of faces) {
      for (let i = 1; i + 1 < face.line.length; i += 1) {
        for (const point of [0, i, i + 1]) {
          if (corner >= position.count) break;
          const [radius, z] = at(face.line, point);
          position.setXYZ(corner, ...place(face, radius, z));
          plane.setXY(corner, radius, z);
          hatch.setXY(corner, face.pattern === "winding" ? 1 : 0, 0);
          corner += 1;
        }
      }
    }
    for (const attribute of [position, plane, hatch]) attribute.needsUpdate = true;
    this.geometry.setDrawRange(0, corner);
    this.mesh.visible = corner > 0;
  }
}

/** The lines round cut faces. */
export const faceLines = (faces: readonly CutFace[]): FreeLine[] =>
  faces.flatMap((face) =>
    face.line.map(([radius, z], i) => {
      const [toRadius, toZ] = at(face.line, (i + 1) % face.line.length);
      return {
        from: place(face, radius, z),
        to: place(face, toRadius, toZ),
        weight: 1.4,
        colour: "edge" as const,
      };
    }),
  );

const place = (face: CutFace, radius: number, z: number): [number, number, number] => [
  face.x + radius * Math.cos(face.direction),
  face.y + radius * Math.sin(face.direction),
  z,
];
