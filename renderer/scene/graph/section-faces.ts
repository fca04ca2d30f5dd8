import {
  BufferAttribute,
  BufferGeometry,
  type InstancedBufferGeometry,
  Mesh,
  type ShaderMaterial,
} from "three";
import { at } from "../../../shared/at.ts";
import type { CutFace } from "../view/sections.ts";
import { type FreeLine, lineGeometry, writeLines } from "./buffers.ts";
import { lineMesh, unculled } from "./node.ts";

/** Cut faces of one colour with the lines round them: a small mesh that is written anew when the cut moves. */
export class SectionFaces {
  readonly mesh: Mesh;
  readonly lines: Mesh;
  private readonly geometry = new BufferGeometry();
  private readonly lineBuffer: InstancedBufferGeometry;

  /**
   * @param room corners of all triangles and lines round all faces, at most
   */
  constructor(section: ShaderMaterial, line: ShaderMaterial, room: { corners: number; lines: number }) {
    this.geometry.setAttribute("position", new BufferAttribute(new Float32Array(3 * room.corners), 3));
    this.geometry.setAttribute("plane", new BufferAttribute(new Float32Array(2 * room.corners), 2));
    this.geometry.setAttribute("hatch", new BufferAttribute(new Float32Array(2 * room.corners), 2));
    this.geometry.setDrawRange(0, 0);
    this.mesh = unculled(new Mesh(this.geometry, section));
    this.lineBuffer = lineGeometry(room.lines);
    this.lines = lineMesh(this.lineBuffer, line);
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
    writeLines(this.lineBuffer, faceLines(faces));
    this.mesh.visible = corner > 0;
    this.lines.visible = corner > 0;
  }
}

/** The lines round cut faces. */
const faceLines = (faces: readonly CutFace[]): FreeLine[] =>
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
