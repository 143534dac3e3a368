// What is done in the view beside turning it: a cut, the draft map, the filling, marks and lengths.
import * as THREE from "three";
import { GLTFLoader } from "/three/GLTFLoader.js";

// The cividis color map of J. R. Nunez, C. R. Anderton and R. S. Renslow (PLOS ONE 13(7), 2018),
// some of its rows.
const CIVIDIS = [
  [0, 0.135, 0.305], [0.118, 0.226, 0.434], [0.279, 0.319, 0.423], [0.401, 0.412, 0.441],
  [0.518, 0.508, 0.473], [0.648, 0.611, 0.455], [0.786, 0.72, 0.4], [0.932, 0.84, 0.286],
  [0.996, 0.909, 0.218],
];

// Vermillion and blue of M. Okabe and K. Ito, 2008.
const CAUGHT = 0xd55e00;
const LIQUID = 0x56b4e9;
const AIR = 0xd55e00;

// Share of the depth range, half a millimeter or so of a mold seen whole.
const NEARER = "1e-5";

// Draft from which more makes no difference, degrees.
export const MOST_DRAFT = 10;

export const cividis = (share) => {
  const at = Math.min(1, Math.max(0, share)) * (CIVIDIS.length - 1);
  const i = Math.min(CIVIDIS.length - 2, Math.floor(at));
  const rgb = CIVIDIS[i].map((c, k) => c + (at - i) * (CIVIDIS[i + 1][k] - c));
  return new THREE.Color().setRGB(...rgb, THREE.SRGBColorSpace);
};

export class Tools {
  constructor(view) {
    this.view = view;
    this.extra = [];
  }

  // The body that is cast, or the model.
  casting() {
    const node = this.view.group.getObjectByName("casting") ?? this.view.group.getObjectByName("model");
    let mesh = null;
    node?.traverse((o) => (mesh ??= o.isMesh && !o.userData.mark ? o : null));
    return mesh;
  }

  // Puts away what an earlier look has added.
  clear() {
    for (const o of this.extra) {
      o.removeFromParent();
      o.geometry?.dispose();
    }
    this.extra = [];
    const mesh = this.view.group && this.casting();
    if (mesh?.userData.plain) {
      mesh.geometry = mesh.userData.plain.geometry;
      mesh.material = mesh.userData.plain.material;
      mesh.userData.plain = null;
    }
  }

  add(object, parent) {
    object.userData.mark = true;
    (parent ?? this.view.root()).add(object);
    this.extra.push(object);
    return object;
  }

  // Colors each facet by the angle between it and the pull that suits it best.
  draft(pulls) {
    const mesh = this.casting();
    const flat = mesh.geometry.toNonIndexed();
    const p = flat.getAttribute("position");
    const colors = new Float32Array(3 * p.count);
    const [a, b, c, n] = [0, 1, 2, 3].map(() => new THREE.Vector3());
    const ways = pulls.map((d) => new THREE.Vector3(...d).normalize());
    let low = 0;
    let whole = 0;
    for (let i = 0; i < p.count; i += 3) {
      a.fromBufferAttribute(p, i);
      b.fromBufferAttribute(p, i + 1).sub(a);
      c.fromBufferAttribute(p, i + 2).sub(a);
      n.crossVectors(b, c);
      const area = n.length() / 2;
      n.normalize();
      const most = Math.max(...ways.map((w) => w.dot(n)));
      const deg = (Math.asin(Math.min(1, Math.max(-1, most))) * 180) / Math.PI;
      whole += area;
      low += deg < 1 ? area : 0;
      const color = cividis(deg / MOST_DRAFT);
      for (let k = 0; k < 3; k++) {
        color.toArray(colors, 3 * (i + k));
      }
    }
    flat.setAttribute("color", new THREE.BufferAttribute(colors, 3));
    mesh.userData.plain = { geometry: mesh.geometry, material: mesh.material };
    mesh.geometry = flat;
    mesh.material = new THREE.MeshStandardMaterial({
      vertexColors: true, flatShading: true, roughness: 0.8, clippingPlanes: this.view.clip,
    });
    this.view.draw();
    return low / whole;
  }

  // Lays the caught places over the casting.
  async caught(address) {
    const gltf = await new GLTFLoader().loadAsync(address);
    const held = gltf.scene.getObjectByName("caught");
    if (held) {
      held.material.polygonOffset = true;
      held.material.polygonOffsetFactor = -2;
      held.material.polygonOffsetUnits = -2;
      this.add(held);
      this.view.draw();
    }
  }

  // A plane across an axis of the mold frame, at a share of what is shown; returns where, in mm.
  cut(axis, share) {
    if (!axis) {
      this.clipBy([]);
      return null;
    }
    const root = this.view.root();
    root.updateWorldMatrix(true, true);
    const box = new THREE.Box3().setFromObject(root);
    const at = box.min[axis] + share * (box.max[axis] - box.min[axis]);
    const n = new THREE.Vector3(axis === "x" ? -1 : 0, axis === "y" ? -1 : 0, axis === "z" ? -1 : 0);
    this.clipBy([new THREE.Plane(n, at)]);
    return at * 1000;
  }

  // Cuts all bodies; their inside shows in one flat color, as if they were solid.
  clipBy(planes) {
    this.view.clip.length = 0;
    this.view.clip.push(...planes);
    this.view.group.traverse((o) => {
      if (!o.isMesh || o.userData.mark) {
        return;
      }
      o.material.clippingPlanes = this.view.clip;
      o.material.side = planes.length ? THREE.DoubleSide : THREE.FrontSide;
      this.flatInside(o.material);
      o.material.needsUpdate = true;
    });
    this.view.draw();
  }

  // Back faces are seen only through a cut: they are drawn without light, and before the front face
  // of the next body that lies in the same place.
  flatInside(material) {
    material.onBeforeCompile = (shader) => {
      shader.fragmentShader = shader.fragmentShader.replace(
        "#include <opaque_fragment>",
        `gl_FragDepth = gl_FragCoord.z;
        if (!gl_FrontFacing) {
          outgoingLight = diffuseColor.rgb * 0.72;
          gl_FragDepth -= ${NEARER};
        }
        #include <opaque_fragment>`,
      );
    };
  }

  // Shows the casting as filled along up, with the air that stays; fillTo says how far.
  fill(up, pockets) {
    const mesh = this.casting();
    const low = this.bottom(up);
    const world = new THREE.Vector3(...up).transformDirection(this.view.root().matrixWorld);
    this.surface = { plane: new THREE.Plane(world.negate(), 0), low, air: [] };
    const paint = new THREE.MeshStandardMaterial({
      color: LIQUID, side: THREE.DoubleSide, flatShading: true, clippingPlanes: [this.surface.plane],
    });
    this.flatInside(paint);
    mesh.userData.plain = { geometry: mesh.geometry, material: mesh.material };
    mesh.material = paint;
    const ghost = new THREE.MeshStandardMaterial({
      color: 0xaebbc8, transparent: true, opacity: 0.18, depthWrite: false, flatShading: true,
    });
    this.add(new THREE.Mesh(mesh.geometry.clone(), ghost), mesh.parent);
    for (const p of pockets) {
      const top = p.top[0] * up[0] + p.top[1] * up[1] + p.top[2] * up[2] - low;
      const r = Math.max(0.8, Math.cbrt((3 * p.volume_mm3) / (4 * Math.PI)));
      this.surface.air.push({ ball: this.ball(p.top, r, AIR), from: top - p.depth_mm });
    }
  }

  fillTo(levelMm) {
    const s = this.surface;
    s.plane.constant = (s.low + levelMm) * 0.001;
    s.air.forEach((a) => (a.ball.visible = levelMm >= a.from));
    this.view.draw();
  }

  // The lowest point of the casting along up, mm.
  bottom(up) {
    const p = this.casting().geometry.getAttribute("position");
    let low = Infinity;
    for (let i = 0; i < p.count; i++) {
      low = Math.min(low, p.getX(i) * up[0] + p.getY(i) * up[1] + p.getZ(i) * up[2]);
    }
    return low;
  }

  ball(at, radius, color, keep = false) {
    const ball = new THREE.Mesh(
      new THREE.SphereGeometry(radius, 20, 12),
      new THREE.MeshBasicMaterial({ color, depthTest: false, transparent: true, opacity: 0.9 }),
    );
    ball.renderOrder = 2;
    ball.position.set(...at);
    if (keep) {
      ball.userData.mark = true;
      this.view.root().add(ball);
    } else {
      this.add(ball);
    }
    this.view.draw();
    return ball;
  }

  // A line between two places.
  stretch(a, b) {
    const points = [new THREE.Vector3(...a), new THREE.Vector3(...b)];
    const line = new THREE.Line(
      new THREE.BufferGeometry().setFromPoints(points),
      new THREE.LineBasicMaterial({ color: CAUGHT, depthTest: false, transparent: true }),
    );
    line.renderOrder = 2;
    line.userData.mark = true;
    this.view.root().add(line);
    this.view.draw();
    return line;
  }

  // How large a mark must be to be seen, mm.
  dot() {
    return (this.view.ball?.radius ?? 0.05) * 1000 * 0.018;
  }
}
