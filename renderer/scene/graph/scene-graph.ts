import { Group, InstancedMesh, Mesh } from "three";
import { at } from "../../../shared/at.ts";
import { type BodyAngles, bodyAngles, hasReduction } from "../angles.ts";
import type { SceneAngles, SceneLook, SceneModel } from "../contract.ts";
import { type Palette, paletteFor } from "../palette.ts";
import { APART, Z } from "../parts/stations.ts";
import { radiusAtAngle, risingAngles } from "../shape/loop.ts";
import { ringSector, type Sector, statorSector } from "../view/cut.ts";
import { type CutFace, ringFaces, statorFaces } from "../view/sections.ts";
import { lastPlanetMark, type SceneBodies, sceneBodies } from "./bodies.ts";
import { edgeGeometry, lineGeometry, surfaceGeometry, writeLines } from "./buffers.ts";
import { Chosen, OUTLINE } from "./chosen.ts";
import { Drawn } from "./drawn.ts";
import { groundOf } from "./ground.ts";
import { allMaterials, paint, type SceneMaterials, sceneMaterials, setUniform } from "./materials.ts";
import { bodyNode, lineMesh, PlanetNode, type SceneNode, shiftOf, turnNode, unculled } from "./node.ts";
import { CUT, PARTS } from "./pieces.ts";
import { faceLines, SectionFaces } from "./section-faces.ts";
import { layShade, shadeMesh } from "./shade.ts";

/** Corners and lines the cut faces take at most: two of the ring, six of each stator. */
const RING_CORNERS = 2 * 12 + 6 * 6;
const SUN_CORNERS = 6 * 6;
const FACE_LINES = 2 * 6 + 12 * 4;

/** The look before anyone chose one. */
export const FIRST_LOOK: SceneLook = {
  theme: "light",
  projector: false,
  cut: 0.22,
  explode: 0,
  labels: false,
  marks: true,
  torques: null,
  selected: null,
  extent: "gear set",
};

/** The scene without a renderer: what is in it, where it stands and how it is turned. Can be built without a screen. */
export class SceneGraph {
  readonly root = new Group();
  readonly materials: SceneMaterials = sceneMaterials();
  palette: Palette = paletteFor(FIRST_LOOK);
  look: SceneLook = FIRST_LOOK;
  angles: BodyAngles;
  model: SceneModel;
  bodies: SceneBodies;
  nodes: SceneNode[] = [];
  /** Sectors by cut class; class 0 is none. */
  sectors: readonly Sector[] = [];
  private readonly shade: Mesh;
  private readonly drawn: Drawn;
  private readonly sunFaces: SectionFaces;
  private readonly outputFaces: SectionFaces;
  private readonly faceLineBuffer = lineGeometry(FACE_LINES);
  private readonly faceLineMesh: Mesh;
  private readonly chosen: Chosen;
  private floor: Group | null = null;
  private hasTrain = false;
  private toothAngles: readonly number[] = [];

  constructor(model: SceneModel) {
    const { materials } = this;
    this.shade = shadeMesh(materials);
    this.drawn = new Drawn(materials);
    this.sunFaces = new SectionFaces(materials.sunSection, SUN_CORNERS);
    this.outputFaces = new SectionFaces(materials.ringSection, RING_CORNERS);
    this.faceLineMesh = lineMesh(this.faceLineBuffer, materials.lines);
    this.chosen = new Chosen(materials);
    this.root.add(this.shade, this.drawn.mesh, this.drawn.lines, this.faceLineMesh);
    this.root.add(this.sunFaces.mesh, this.outputFaces.mesh);
    this.model = model;
    this.angles = bodyAngles(model, { carrier: 0, ring: 0 });
    this.bodies = sceneBodies(model);
    this.build();
  }

  /** Rebuilds everything for other teeth or ratios; angles and look stay. */
  setModel(model: SceneModel): void {
    const { carrier, ring } = this.angles;
    this.bodies = sceneBodies(model);
    this.model = model;
    this.chosen.clear();
    this.clearNodes();
    this.angles = bodyAngles(model, { carrier, ring });
    this.build();
  }

  /** Turns everything. */
  setAngles(angles: SceneAngles): void {
    this.angles = bodyAngles(this.model, angles);
    for (const node of this.nodes) turnNode(node, this.angles);
    if (this.floor !== null) this.floor.rotation.z = this.turningOf("ring");
    if (ringSector(this.look).half > 0) this.writeFaces();
  }

  /** Shows it another way. */
  setLook(look: SceneLook): void {
    this.look = look;
    this.palette = paletteFor(look);
    paint(this.materials, this.palette);
    if (look.extent === "drivetrain") this.buildTrain();
    this.materials.uniforms.marks.value = look.marks ? 1 : 0;
    this.materials.uniforms.hovered.value = look.hovered == null ? -1 : PARTS.indexOf(look.hovered);
    for (const node of this.nodes) {
      node.group.position.z = shiftOf(node, look.explode);
      node.group.visible = node.shown === "both" || node.shown === look.extent;
    }
    this.placeCut();
    this.writeFaces();
    this.drawn.write(look, this.palette, this.bodies.measures, this.axes());
    const ground = groundOf(this.bodies, look);
    layShade(this.shade, this.materials, ground.y, ground.boxes);
    this.chosen.choose(look.selected, this.visibleNodes(), this.palette);
  }

  /** Sets the width of the outline round a chosen part, for device pixels a CSS pixel. */
  setOutline(scale: number): void {
    setUniform(this.materials.chosen, "extra", OUTLINE * scale);
  }

  /** Nodes shown in this look. */
  visibleNodes(): SceneNode[] {
    return this.nodes.filter(({ group }) => group.visible);
  }

  /** Frees every buffer and material. */
  dispose(): void {
    this.chosen.clear();
    this.clearNodes();
    disposeTree(this.root);
    this.root.clear();
    for (const material of allMaterials(this.materials)) material.dispose();
  }

  private build(): void {
    const { bodies, materials } = this;
    const mark = lastPlanetMark(bodies);
    const distance = bodies.measures.centreDistance;
    this.nodes = [
      ...bodies.set.map((spec) => bodyNode(spec, materials)),
      new PlanetNode(bodies.planet, mark, bodies.planets, distance, materials),
    ];
    this.root.add(...this.nodes.map(({ group }) => group));
    this.hasTrain = false;
    this.toothAngles = risingAngles(bodies.ringOutline);
    this.floor = new Group();
    const floorMesh = unculled(new Mesh(surfaceGeometry([bodies.floor]), materials.floor));
    addHatchAttributes(floorMesh);
    this.floor.add(floorMesh, lineMesh(edgeGeometry([bodies.floor]), materials.lines));
    this.root.add(this.floor);
    for (const node of this.nodes) turnNode(node, this.angles);
    this.floor.rotation.z = this.turningOf("ring");
    this.setLook(this.look);
  }

  private buildTrain(): void {
    if (this.hasTrain) return;
    this.hasTrain = true;
    for (const spec of this.bodies.train()) {
      const node = bodyNode(spec, this.materials);
      turnNode(node, this.angles);
      this.nodes.push(node);
      this.root.add(node.group);
    }
  }

  private turningOf(name: string): number {
    return this.nodes.find((node) => node.name === name)?.turning.rotation.z ?? 0;
  }

  private clearNodes(): void {
    for (const { group } of this.nodes) {
      disposeTree(group);
      group.removeFromParent();
    }
    if (this.floor !== null) {
      disposeTree(this.floor);
      this.floor.removeFromParent();
      this.floor = null;
    }
    this.nodes = [];
  }

  private placeCut(): void {
    const { reduction } = this.bodies.driveline;
    const ring = ringSector(this.look);
    const sun = statorSector(this.look, 0, 0);
    const output = statorSector(this.look, reduction?.x ?? 0, reduction?.y ?? 0);
    this.sectors = [{ x: 0, y: 0, middle: 0, half: 0, floor: 0 }, ring, sun, output];
    const { cutAxis, cutMiddle, cutCosine, cutFloor } = this.materials.uniforms;
    this.sectors.forEach((sector, i) => {
      at(cutAxis.value, i).set(sector.x, sector.y);
      at(cutMiddle.value, i).set(Math.cos(sector.middle), Math.sin(sector.middle));
      // A cosine above 1 is met by no direction: nothing is cut.
      cutCosine.value[i] = sector.half > 0 ? Math.cos(sector.half) : 2;
      cutFloor.value[i] = sector.floor;
    });
    if (this.floor !== null) {
      this.floor.visible = ring.half > 0;
      this.floor.position.z = ring.floor;
    }
  }

  private writeFaces(): void {
    const { bodies, look } = this;
    const outline = bodies.ringOutline;
    const turn = this.angles.ring;
    const [ring, sun, output] = [CUT.ring, CUT.sunMachine, CUT.outputMachine].map((i) => at(this.sectors, i));
    if (ring === undefined || sun === undefined || output === undefined) return;
    const whole = look.extent === "drivetrain";
    const sunFaces = whole ? statorFaces(sun, bodies.sunMachine, APART.sunStator * look.explode) : [];
    const outputFaces: CutFace[] = [
      ...ringFaces(ring, bodies.measures, APART.ring * look.explode, (direction) =>
        radiusAtAngle(outline, this.toothAngles, direction - turn),
      ),
      ...(whole ? statorFaces(output, bodies.outputMachine, APART.outputStator * look.explode) : []),
    ];
    this.sunFaces.write(sunFaces);
    this.outputFaces.write(outputFaces);
    writeLines(this.faceLineBuffer, faceLines([...sunFaces, ...outputFaces]));
  }

  private axes() {
    const { look } = this;
    const { final, reduction } = this.bodies.driveline;
    const e = look.explode;
    if (look.extent === "gear set") {
      // Put together, the axis is plain to see; its line would only lie across the shaft's end.
      if (e === 0) return [];
      return [
        { x: 0, y: 0, back: Z.bellBack - 40 + APART.ring * e, front: Z.carrierStubEnd + 14 + APART.sun * e },
      ];
    }
    const main = {
      x: 0,
      y: 0,
      back: Z.outputMachine.back - 40 + APART.outputRotor * e,
      front: Z.crankEnd + 24 + APART.engine * e,
    };
    const axle = {
      x: final.x,
      y: final.y,
      back: Z.axleBack - 30 + APART.outputGears * e,
      front: Z.axleFront + 34 + APART.outputGears * e,
    };
    const machine =
      hasReduction(this.model) && reduction !== null
        ? [{ ...main, x: reduction.x, y: reduction.y, front: 0 }]
        : [];
    return [main, axle, ...machine];
  }
}

/** The floor is built like any body but drawn as a section: the hatch needs its cut class. */
function addHatchAttributes(mesh: Mesh): void {
  const { geometry } = mesh;
  const kind = geometry.getAttribute("kind");
  const plane = geometry.getAttribute("position").clone();
  const hatch = kind.clone();
  for (let i = 0; i < kind.count; i += 1) {
    hatch.setXYZW(i, 0, CUT.ringFloor, 0, 0);
  }
  geometry.setAttribute("plane", plane);
  geometry.setAttribute("hatch", hatch);
  geometry.deleteAttribute("kind");
}

/** Frees the buffers of everything below an object. */
function disposeTree(object: Group | Mesh): void {
  object.traverse((child) => {
    if (child instanceof InstancedMesh) child.dispose();
    if (child instanceof Mesh) child.geometry.dispose();
  });
}
