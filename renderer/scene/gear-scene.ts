import { OrthographicCamera, Raycaster, Scene, Vector2, Vector3, WebGLRenderer } from "three";
import type {
  CameraPreset,
  GearScene,
  PartId,
  SceneAngles,
  SceneLook,
  SceneModel,
  SceneStats,
} from "./contract.ts";
import { pickPart } from "./graph/pick.ts";
import { FIRST_LOOK, SceneGraph } from "./graph/scene-graph.ts";
import {
  type Basis,
  basisOf,
  boundsOf,
  type Drum,
  type Eye,
  eyeOf,
  type Framing,
  framed,
  orbited,
  projected,
} from "./view/camera.ts";
import { dragTurn } from "./view/drag.ts";
import { type LabelPlace, layLabels } from "./view/labels.ts";
import { anchorOf, drumsOf, gripOf, partsShown } from "./view/places.ts";

/** Distance of the eye from the scene, units: farther than anything in it. */
const EYE_DISTANCE = 900;

/** Room for a label's text, CSS pixels, and on a projector. */
const LABEL = { width: 128, height: 22 };
const PROJECTED_LABEL = { width: 180, height: 30 };

/** Makes the scene of a model on a canvas. */
export const createGearScene = (canvas: HTMLCanvasElement, model: SceneModel): GearScene =>
  new CanvasScene(canvas, model);

class CanvasScene implements GearScene {
  private readonly renderer: WebGLRenderer;
  private readonly graph: SceneGraph;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private readonly ray = new Raycaster();
  private preset: CameraPreset = "three-quarter";
  private eye: Eye = eyeOf("three-quarter", FIRST_LOOK.extent);
  private size = { width: 1, height: 1 };
  private pixelRatio = 1;
  private basis: Basis = basisOf(this.eye);
  private framing: Framing = { u: 0, v: 0, pixelsPerUnit: 1 };
  private changed = true;
  private frames = 0;
  /** labels as they lie since the scene was last aimed: they do not turn with the shafts */
  private laid: readonly LabelPlace[] | null = null;

  constructor(canvas: HTMLCanvasElement, model: SceneModel) {
    this.graph = new SceneGraph(model);
    this.renderer = new WebGLRenderer({
      canvas,
      antialias: true,
      alpha: true,
      stencil: true,
      preserveDrawingBuffer: true,
    });
    this.renderer.setClearColor(0x000000, 0);
    this.scene.add(this.graph.root);
    canvas.addEventListener("webglcontextrestored", this.redraw);
    this.resize(canvas.clientWidth || 300, canvas.clientHeight || 150, 1);
  }

  setModel(model: SceneModel): void {
    if (sameModel(model, this.graph.model)) return;
    this.graph.setModel(model);
    this.aim();
  }

  setAngles(angles: SceneAngles): void {
    const now = this.graph.angles;
    if (angles.carrier === now.carrier && angles.ring === now.ring) return;
    this.graph.setAngles(angles);
    this.changed = true;
  }

  setLook(look: SceneLook): void {
    if (sameLook(look, this.graph.look)) return;
    const swapped = look.extent !== this.graph.look.extent;
    this.graph.setLook(look);
    if (swapped) this.eye = eyeOf(this.preset, look.extent);
    this.aim();
  }

  resize(width: number, height: number, pixelRatio: number): void {
    this.size = { width: Math.max(1, width), height: Math.max(1, height) };
    this.pixelRatio = pixelRatio;
    this.renderer.setPixelRatio(pixelRatio);
    this.renderer.setSize(this.size.width, this.size.height, false);
    this.aim();
  }

  setCamera(preset: CameraPreset): void {
    this.preset = preset;
    this.eye = eyeOf(preset, this.graph.look.extent);
    this.aim();
  }

  orbit(dx: number, dy: number, zoom: number): void {
    this.eye = orbited(this.eye, dx, dy, zoom);
    this.aim();
  }

  pickAt(x: number, y: number): PartId | null {
    const { width, height } = this.size;
    this.graph.root.updateMatrixWorld();
    this.ray.setFromCamera(new Vector2((2 * x) / width - 1, 1 - (2 * y) / height), this.camera);
    return pickPart(this.graph, this.ray);
  }

  labelPlaces(): readonly LabelPlace[] {
    this.laid ??= this.graph.look.labels ? this.layAll() : [];
    return this.laid;
  }

  dragAngle(part: PartId, fromX: number, fromY: number, toX: number, toY: number): number | null {
    const grip = gripOf(this.graph.bodies, part, this.graph.look);
    const { basis, framing, size } = this;
    return dragTurn(grip, { basis, framing, size }, { x: fromX, y: fromY }, { x: toX, y: toY });
  }

  render(): boolean {
    if (!this.changed) return false;
    this.changed = false;
    this.frames += 1;
    this.renderer.render(this.scene, this.camera);
    return true;
  }

  stats(): SceneStats {
    const { calls, triangles } = this.renderer.info.render;
    return { drawCalls: calls, triangles, frames: this.frames };
  }

  dispose(): void {
    this.renderer.domElement.removeEventListener("webglcontextrestored", this.redraw);
    this.scene.clear();
    this.graph.dispose();
    this.renderer.dispose();
  }

  /** After the graphics driver took the canvas away and gave it back, it is empty. */
  private readonly redraw = (): void => {
    this.changed = true;
  };

  private layAll(): readonly LabelPlace[] {
    const { bodies, look } = this.graph;
    const anchors = partsShown(bodies, look).map((part) => {
      const { x, y } = projected(anchorOf(bodies, part, look), this.basis, this.framing, this.size);
      return { part, anchorX: x, anchorY: y };
    });
    const drums = drumsOf(bodies, look);
    const room = look.projector ? PROJECTED_LABEL : LABEL;
    const inSight = anchors.filter(
      ({ anchorX: x, anchorY: y }) => x >= 0 && y >= 0 && x <= this.size.width && y <= this.size.height,
    );
    return layLabels(inSight, {
      ...this.size,
      boxWidth: room.width,
      boxHeight: room.height,
      covered: (x, y) => this.covered(drums, x, y),
    });
  }

  /** Whether a point of the canvas lies over the drawing: inside the outline of one of its drums. */
  private covered(drums: readonly Drum[], x: number, y: number): boolean {
    const { basis, framing, size } = this;
    return drums.some(({ x: cx, y: cy, radius, back, front }) =>
      [back, (back + front) / 2, front].some((z) => {
        const centre = projected([cx, cy, z], basis, framing, size);
        const u = (x - centre.x) / framing.pixelsPerUnit;
        const v = (centre.y - y) / framing.pixelsPerUnit;
        if (Math.abs(basis.toEye[2]) < 0.05) return false;
        const depth = -(basis.right[2] * u + basis.up[2] * v) / basis.toEye[2];
        const px = basis.right[0] * u + basis.up[0] * v + basis.toEye[0] * depth;
        const py = basis.right[1] * u + basis.up[1] * v + basis.toEye[1] * depth;
        return Math.hypot(px, py) < radius;
      }),
    );
  }

  /** Points the camera at the whole scene, and tells the materials what a pixel is. */
  private aim(): void {
    this.laid = null;
    const { bodies, look } = this.graph;
    const { width, height } = this.size;
    this.basis = basisOf(this.eye);
    const bounds = boundsOf(drumsOf(bodies, look), this.basis);
    this.framing = framed(bounds, width, height, this.eye.zoom);
    const { right, up, toEye } = this.basis;
    const { u, v, pixelsPerUnit } = this.framing;
    const middle = new Vector3(...right).multiplyScalar(u).addScaledVector(new Vector3(...up), v);
    this.camera.position.copy(middle).addScaledVector(new Vector3(...toEye), EYE_DISTANCE);
    this.camera.up.set(...up);
    this.camera.lookAt(middle);
    const [halfWidth, halfHeight] = [width / 2 / pixelsPerUnit, height / 2 / pixelsPerUnit];
    this.camera.left = -halfWidth;
    this.camera.right = halfWidth;
    this.camera.top = halfHeight;
    this.camera.bottom = -halfHeight;
    this.camera.near = 1;
    this.camera.far = 2 * EYE_DISTANCE;
    this.camera.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
    this.writeUniforms(Math.max(bounds.top - bounds.bottom, 0.8 * (bounds.right - bounds.left)));
    this.changed = true;
  }

  private writeUniforms(span: number): void {
    const { uniforms } = this.graph.materials;
    const { palette } = this.graph;
    uniforms.viewport.value.set(this.size.width * this.pixelRatio, this.size.height * this.pixelRatio);
    uniforms.lineScale.value = this.pixelRatio * palette.weight;
    uniforms.pixelsPerUnit.value = this.framing.pixelsPerUnit * this.pixelRatio;
    uniforms.hatchPitch.value = palette.hatchPitch * this.pixelRatio;
    uniforms.hatchWidth.value = palette.hatchWidth * this.pixelRatio;
    uniforms.middle.value.set(0, 0, -EYE_DISTANCE);
    uniforms.reach.value = span / 2;
    this.graph.setOutline(this.pixelRatio * palette.weight);
  }
}

/** Whether two models are built the same. */
const sameModel = (a: SceneModel, b: SceneModel): boolean =>
  a.outputReduction === b.outputReduction &&
  a.finalDrive === b.finalDrive &&
  a.teeth.sunTeeth === b.teeth.sunTeeth &&
  a.teeth.planetTeeth === b.teeth.planetTeeth &&
  a.teeth.ringTeeth === b.teeth.ringTeeth &&
  a.teeth.planets === b.teeth.planets;

/** Whether two looks show the same. */
function sameLook(a: SceneLook, b: SceneLook): boolean {
  const torques = (look: SceneLook): string => JSON.stringify(look.torques);
  return (
    a.theme === b.theme &&
    a.projector === b.projector &&
    a.cut === b.cut &&
    a.explode === b.explode &&
    a.labels === b.labels &&
    a.marks === b.marks &&
    a.selected === b.selected &&
    (a.hovered ?? null) === (b.hovered ?? null) &&
    a.extent === b.extent &&
    torques(a) === torques(b)
  );
}
