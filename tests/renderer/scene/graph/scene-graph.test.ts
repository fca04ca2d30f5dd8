import { type BufferGeometry, InstancedMesh, Matrix4, Mesh, Raycaster, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import { allMaterials } from "../../../../renderer/scene/graph/materials.ts";
import { pickPart } from "../../../../renderer/scene/graph/pick.ts";
import { FIRST_LOOK, SceneGraph } from "../../../../renderer/scene/graph/scene-graph.ts";
import { rgb } from "../../../../renderer/scene/palette.ts";
import { compact, presets, withTeeth } from "../models.ts";
import { costOf } from "./counts.ts";

const TURN = 2 * Math.PI;
const torques = { sun: -28.6, carrier: 100, ring: -71.4 };
const train = { ...FIRST_LOOK, extent: "drivetrain" as const, cut: 0.5 };

/** Turn of a body about the axis as the scene graph has it, −π … π. */
function turnOf(graph: SceneGraph, name: string): number {
  graph.root.updateMatrixWorld(true);
  const node = graph.nodes.find((each) => each.name === name);
  if (node === undefined) throw new Error(`no node ${name}`);
  const e = node.turning.matrixWorld.elements;
  return Math.atan2(e[1] ?? 0, e[0] ?? 0);
}

/** Distance of an angle from the next whole turn. */
const offTurn = (angle: number): number => Math.abs(angle - TURN * Math.round(angle / TURN));

describe("turning", () => {
  for (const [name, model] of presets) {
    it(`obeys the gear equation after an hour at several speeds (${name})`, () => {
      const graph = new SceneGraph(model);
      graph.setLook(train);
      const { sunTeeth, ringTeeth, planetTeeth } = model.teeth;
      const k = ringTeeth / sunTeeth;
      for (const [carrierSpeed, ringSpeed] of [
        [251.3, 104.7],
        [0, 523.6],
        [418.9, 0],
        [157.08, -99.9],
        [0.013, 0.007],
      ] as const) {
        // Summed as a clock would: an hour of frames, each with its rounding.
        let carrier = 0;
        let ring = 0;
        for (let frame = 0; frame < 3600 * 60; frame += 1) {
          carrier += carrierSpeed / 60;
          ring += ringSpeed / 60;
        }
        graph.setAngles({ carrier, ring });
        const [sun, carrierTurn, ringTurn] = ["sun", "carrier", "ring"].map((part) => turnOf(graph, part));
        // φs + k φr = (1 + k) φc. Each drawn angle is known up to whole turns only, so every term is multiplied by the
        // sun's teeth, which makes all factors whole.
        const rest =
          sunTeeth * (sun ?? 0) + ringTeeth * (ringTurn ?? 0) - (sunTeeth + ringTeeth) * (carrierTurn ?? 0);
        expect(offTurn(rest) / (sunTeeth + ringTeeth)).toBeLessThan(1e-6);
        expect(offTurn((carrierTurn ?? 0) - carrier)).toBeLessThan(1e-6);
        expect(offTurn((ringTurn ?? 0) - ring)).toBeLessThan(1e-6);
        expect(offTurn((sun ?? 0) - (carrier + k * (carrier - ring)))).toBeLessThan(1e-6);

        expect(offTurn(turnOf(graph, "sun rotor") - (sun ?? 0))).toBeLessThan(1e-6);
        expect(offTurn(turnOf(graph, "engine") - (carrierTurn ?? 0))).toBeLessThan(1e-6);
        expect(offTurn(turnOf(graph, "front plate") - (carrierTurn ?? 0))).toBeLessThan(1e-6);
        expect(offTurn(turnOf(graph, "output rotor") + model.outputReduction * ring)).toBeLessThan(1e-6);
        expect(offTurn(turnOf(graph, "axle") + ring / model.finalDrive)).toBeLessThan(1e-6);

        const planet = planetTurn(graph) - (graph.bodies.planets[0]?.phase ?? 0);
        const wanted = carrier + (ringTeeth / planetTeeth) * (ring - carrier);
        expect(offTurn(planet + (carrierTurn ?? 0) - wanted)).toBeLessThan(1e-6);
      }
      graph.dispose();
    });
  }

  /** Turn of the first planet on the carrier, as its instance has it. */
  function planetTurn(graph: SceneGraph): number {
    const surface = graph.nodes.find(({ name }) => name === "planets")?.surface;
    if (!(surface instanceof InstancedMesh)) throw new Error("planets are instanced");
    const matrix = new Matrix4();
    surface.getMatrixAt(0, matrix);
    return Math.atan2(matrix.elements[1] ?? 0, matrix.elements[0] ?? 0);
  }

  it("keeps angles over a rebuild", () => {
    const graph = new SceneGraph(compact);
    graph.setAngles({ carrier: 1.25, ring: -0.5 });
    graph.setModel(withTeeth(30, 22, 74, 4));
    expect(turnOf(graph, "carrier")).toBeCloseTo(1.25, 12);
    expect(turnOf(graph, "ring")).toBeCloseTo(-0.5, 12);
    graph.dispose();
  });

  it("a machine on the ring's shaft turns with it", () => {
    const graph = new SceneGraph({ ...compact, outputReduction: 1 });
    graph.setLook(train);
    graph.setAngles({ carrier: 0.3, ring: 0.8 });
    expect(turnOf(graph, "output rotor")).toBeCloseTo(0.8, 12);
    graph.dispose();
  });
});

describe("budgets", () => {
  for (const [name, model] of presets) {
    it(`stay within 60 draws and 250 000 triangles in every look (${name})`, () => {
      const graph = new SceneGraph(model);
      for (const look of [
        FIRST_LOOK,
        { ...FIRST_LOOK, torques, cut: 1, explode: 1 },
        { ...FIRST_LOOK, selected: "planets" as const },
        { ...train, torques },
        ...(["sun", "planets", "carrier", "ring", "sun-machine", "axle", "final-drive"] as const).map(
          (selected) => ({ ...train, torques, selected }),
        ),
      ]) {
        graph.setLook(look);
        const { draws, triangles } = costOf(graph.root);
        expect(draws).toBeLessThanOrEqual(60);
        expect(triangles).toBeLessThanOrEqual(250_000);
      }
      graph.dispose();
    });
  }

  // Beyond about a thousand teeth in all the triangles are more; such a set still draws.
  it("hold for sets with very many or very few teeth", () => {
    for (const model of [
      withTeeth(100, 100, 300, 4),
      withTeeth(120, 90, 300, 4),
      withTeeth(18, 18, 54, 3),
      withTeeth(96, 20, 136, 8),
    ]) {
      const graph = new SceneGraph(model);
      graph.setLook({ ...train, torques });
      const { draws, triangles } = costOf(graph.root);
      expect(draws).toBeLessThanOrEqual(60);
      expect(triangles).toBeLessThanOrEqual(250_000);
      graph.dispose();
    }
  });
});

describe("freeing", () => {
  /** Geometries below an object, each once. */
  const geometriesOf = (graph: SceneGraph): Set<BufferGeometry> => {
    const all = new Set<BufferGeometry>();
    graph.root.traverse((object) => {
      if (object instanceof Mesh) all.add(object.geometry);
    });
    return all;
  };

  const watched = (targets: Iterable<{ addEventListener(type: "dispose", done: () => void): void }>) => {
    const left = new Set<object>();
    for (const target of targets) {
      left.add(target);
      target.addEventListener("dispose", () => left.delete(target));
    }
    return left;
  };

  it("leaves no geometry and no material", () => {
    const graph = new SceneGraph(compact);
    graph.setLook({ ...train, selected: "ring", torques });
    const geometries = watched(geometriesOf(graph));
    const materials = watched(allMaterials(graph.materials));
    expect(geometries.size).toBeGreaterThan(30);
    graph.dispose();
    expect(geometries.size).toBe(0);
    expect(materials.size).toBe(0);
    expect(graph.root.children).toHaveLength(0);
  });

  it("a rebuild frees what it replaces and adds nothing on top", () => {
    const graph = new SceneGraph(compact);
    graph.setLook({ ...train, selected: "sun" });
    const before = geometriesOf(graph);
    const left = watched(before);
    graph.setModel(withTeeth(30, 22, 74, 4));
    const after = geometriesOf(graph);
    const kept = [...after].filter((geometry) => before.has(geometry));
    expect(left.size).toBe(kept.length);
    expect(after.size).toBe(before.size);
    graph.dispose();
  });
});

describe("looks", () => {
  it("show the drivetrain only when asked", () => {
    const graph = new SceneGraph(compact);
    expect(graph.visibleNodes().map(({ name }) => name)).not.toContain("axle");
    graph.setLook(train);
    expect(graph.visibleNodes().map(({ name }) => name)).toContain("axle");
    graph.setLook(FIRST_LOOK);
    expect(graph.visibleNodes().map(({ name }) => name)).not.toContain("axle");
    graph.dispose();
  });

  it("draw the parts apart along the axis only", () => {
    const graph = new SceneGraph(compact);
    const before = graph.nodes.map(({ group }) => group.position.clone());
    graph.setLook({ ...FIRST_LOOK, explode: 1 });
    graph.nodes.forEach(({ group }, i) => {
      expect(group.position.x).toBe(before[i]?.x);
      expect(group.position.y).toBe(before[i]?.y);
    });
    const order = ["ring", "carrier", "planets", "front plate", "sun"].map(
      (name) => graph.nodes.find((node) => node.name === name)?.group.position.z ?? 0,
    );
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    graph.dispose();
  });

  it("take the colours of the theme", () => {
    const graph = new SceneGraph(compact);
    const edge = () => [...graph.materials.uniforms.lineColours.value.slice(0, 3)];
    graph.setLook(FIRST_LOOK);
    expect(edge()).toEqual([...rgb("#182024")].map(Math.fround));
    graph.setLook({ ...FIRST_LOOK, theme: "dark" });
    expect(edge()).toEqual([...rgb("#080B0D")].map(Math.fround));
    graph.dispose();
  });

  it("outline the chosen part without keeping buffers of its own", () => {
    const graph = new SceneGraph(compact);
    const plain = costOf(graph.root).draws;
    graph.setLook({ ...FIRST_LOOK, selected: "carrier" });
    expect(costOf(graph.root).draws).toBeGreaterThan(plain);
    graph.setLook({ ...FIRST_LOOK, selected: null });
    expect(costOf(graph.root).draws).toBe(plain);
    graph.dispose();
  });
});

describe("picking", () => {
  const pick = (graph: SceneGraph, x: number, y: number) => {
    graph.root.updateMatrixWorld(true);
    return pickPart(graph, new Raycaster(new Vector3(x, y, 500), new Vector3(0, 0, -1)));
  };

  it("finds the parts from the front", () => {
    const graph = new SceneGraph(compact);
    graph.setLook({ ...FIRST_LOOK, cut: 0 });
    const { ringOuter, centreDistance, sunRoot } = graph.bodies.measures;
    expect(pick(graph, -ringOuter + 2, 0)).toBe("ring");
    expect(pick(graph, 0.85 * sunRoot, 0)).toBe("sun");
    expect(pick(graph, 0, centreDistance)).toBe("carrier");
    const open = graph.bodies.planets.at(-1)?.position ?? 0;
    const r = centreDistance + 9;
    expect(pick(graph, r * Math.cos(open), r * Math.sin(open))).toBe("planets");
    expect(pick(graph, 90, 90)).toBeNull();
    graph.dispose();
  });

  it("looks through what is cut away", () => {
    const graph = new SceneGraph(compact);
    const { ringOuter } = graph.bodies.measures;
    const at = -33 * (Math.PI / 180);
    const [x, y] = [(ringOuter - 2) * Math.cos(at), (ringOuter - 2) * Math.sin(at)];
    const depthAt = (cut: number): number => {
      graph.setLook({ ...FIRST_LOOK, cut });
      return graph.sectors[1]?.floor ?? 0;
    };
    expect(depthAt(0.2)).toBeGreaterThan(depthAt(0.8));
    expect(pick(graph, x, y)).toBeNull();
    graph.setLook({ ...FIRST_LOOK, cut: 0 });
    expect(pick(graph, x, y)).toBe("ring");
    graph.dispose();
  });
});
