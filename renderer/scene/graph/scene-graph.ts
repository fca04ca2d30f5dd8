import { Group, InstancedMesh, Mesh } from "three";
import { at } from "../../../shared/at.ts";
import { type BodyAngles, bodyAngles, type GearTrain, gearTrain, hasReduction } from "../angles.ts";
import type { SceneAngles, SceneLook, SceneModel } from "../contract.ts";
import { setCut } from "../material/uniforms.ts";
import { type Palette, paletteFor } from "../palette.ts";
import type { Machine } from "../parts/machine.ts";
import { APART, Z } from "../parts/stations.ts";
import { radiusAtAngle, risingAngles } from "../shape/loop.ts";
import { ringSector, type Sector, statorSector } from "../view/cut.ts";
import { type CutFace, ringFaces, statorFaces } from "../view/sections.ts";
import { lastPlanetMark, type SceneBodies, sceneBodies } from "./bodies.ts";
import { edgeGeometry, surfaceGeometry } from "./buffers.ts";
import { Chosen, OUTLINE } from "./chosen.ts";
import { Drawn } from "./drawn.ts";
import { groundOf } from "./ground.ts";
import { allMaterials, paint, type SceneMaterials, sceneMaterials, setUniform } from "./materials.ts";
import { bodyNode, lineMesh, PlanetNode, type SceneNode, shiftOf, turnNode, unculled } from "./node.ts";
import { CUT, PARTS } from "./pieces.ts";
import { SectionFaces } from "./section-faces.ts";
import { layShade, shadeMesh } from "./shade.ts";

/** What the cut faces take at most: two hexagons of the ring, six boxes of a stator. */
const RING_ROOM = { corners: 2 * 12, lines: 2 * 6 };
const STATOR_ROOM = { corners: 6 * 6, lines: 6 * 4 };

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
  private readonly ringFaces: SectionFaces;
  private readonly sunFaces: SectionFaces;
  private readonly outputFaces: SectionFaces;
  private readonly chosen: Chosen;
  private floor: Group | null = null;
  private hasTrain = false;
  private train: GearTrain;
  private toothAngles: readonly number[] = [];

  constructor(model: SceneModel) {
    const { materials } = this;
    this.shade = shadeMesh(materials);
    this.drawn = new Drawn(materials);
    const faces = (colour: "sunSection" | "ringSection", room: typeof RING_ROOM): SectionFaces =>
      new SectionFaces(materials[colour], materials.lines, room);
    this.ringFaces = faces("ringSection", RING_ROOM);
    this.sunFaces = faces("sunSection", STATOR_ROOM);
    this.outputFaces = faces("ringSection", STATOR_ROOM);
    this.chosen = new Chosen(materials);
    this.root.add(this.shade, this.drawn.mesh, this.drawn.lines);
    for (const { mesh, lines } of [this.ringFaces, this.sunFaces, this.outputFaces])
      this.root.add(mesh, lines);
    this.model = model;
    this.train = gearTrain(model);
    this.angles = bodyAngles(this.train, { carrier: 0, ring: 0 });
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
    this.train = gearTrain(model);
    this.angles = bodyAngles(this.train, { carrier, ring });
    this.build();
  }

  /** Turns everything. */
  setAngles(angles: SceneAngles): void {
    this.angles = bodyAngles(this.train, angles);
    for (const node of this.nodes) turnNode(node, this.angles);
    if (this.floor !== null) this.floor.rotation.z = this.turningOf("ring");
    this.writeRingFaces();
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
    this.writeRingFaces();
    this.writeStatorFaces();
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
    this.sectors.forEach((sector, i) => {
      setCut(this.materials.uniforms, i, sector);
    });
    if (this.floor !== null) {
      this.floor.visible = ring.half > 0;
      this.floor.position.z = ring.floor;
    }
  }

  /** The ring's teeth pass through the planes of the cut as it turns. */
  private writeRingFaces(): void {
    const outline = this.bodies.ringOutline;
    const sector = at(this.sectors, CUT.ring);
    this.ringFaces.write(
      ringFaces(sector, this.bodies.measures, APART.ring * this.look.explode, (direction) =>
        radiusAtAngle(outline, this.toothAngles, direction - this.angles.ring),
      ),
    );
  }

  private writeStatorFaces(): void {
    const { bodies, look } = this;
    const whole = look.extent === "drivetrain";
    const faces = (index: number, machine: Machine, shift: number): CutFace[] =>
      whole ? statorFaces(at(this.sectors, index), machine, shift * look.explode) : [];
    this.sunFaces.write(faces(CUT.sunMachine, bodies.sunMachine, APART.sunStator));
    this.outputFaces.write(faces(CUT.outputMachine, bodies.outputMachine, APART.outputStator));
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
