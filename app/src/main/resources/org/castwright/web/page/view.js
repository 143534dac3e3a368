// The 3D view: a model, or a mold that opens in its proved order.
import * as THREE from "three";
import { OrbitControls } from "/three/OrbitControls.js";
import { GLTFLoader } from "/three/GLTFLoader.js";

const SEE_THROUGH = 0.28;
const MM = 0.001;

// A bounding ball is larger than what is in it: 1 would leave much room.
const CLOSE = 0.98;

// A press that moves farther than this many pixels turns the view and points at nothing.
const STILL = 5;

export class View {
  constructor(place) {
    this.place = place;
    this.scene = new THREE.Scene();
    this.camera = new THREE.PerspectiveCamera(32, 1, 0.001, 100);
    this.renderer = new THREE.WebGLRenderer({ antialias: true, alpha: true });
    this.renderer.localClippingEnabled = true;
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    place.append(this.renderer.domElement);
    this.scene.add(new THREE.HemisphereLight(0xffffff, 0x8a8f96, 1.7));
    const sun = new THREE.DirectionalLight(0xffffff, 1.9);
    sun.position.set(0.6, 1, 0.9);
    this.camera.add(sun);
    this.scene.add(this.camera);
    this.controls = new OrbitControls(this.camera, this.renderer.domElement);
    this.controls.addEventListener("change", () => this.draw());
    place.addEventListener("keydown", (e) => this.key(e));
    this.watchPresses(this.renderer.domElement);
    new ResizeObserver(() => this.fit()).observe(place);
    this.pieces = [];
    this.group = null;
    this.pointed = null;
    this.fit();
  }

  fit() {
    const { clientWidth: w, clientHeight: h } = this.place;
    if (w === 0 || h === 0) {
      return;
    }
    this.renderer.setSize(w, h);
    this.camera.aspect = w / h;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  draw() {
    if (!this.waiting) {
      this.waiting = true;
      requestAnimationFrame(() => {
        this.waiting = false;
        this.renderer.render(this.scene, this.camera);
      });
    }
  }

  // Arrow keys turn, plus and minus come closer and go away, 0 looks from the front again, Enter
  // points at what is in the middle.
  key(e) {
    const s = new THREE.Spherical().setFromVector3(
      this.camera.position.clone().sub(this.controls.target),
    );
    const turn = 0.12;
    const moves = {
      ArrowLeft: () => (s.theta -= turn),
      ArrowRight: () => (s.theta += turn),
      ArrowUp: () => (s.phi = Math.max(0.05, s.phi - turn)),
      ArrowDown: () => (s.phi = Math.min(Math.PI - 0.05, s.phi + turn)),
      "+": () => (s.radius *= 0.9),
      "-": () => (s.radius *= 1.1),
      0: () => this.look(),
      Enter: () => this.point(0, 0),
    };
    if (moves[e.key]) {
      moves[e.key]();
      if (e.key !== "0" && e.key !== "Enter") {
        this.camera.position.setFromSpherical(s).add(this.controls.target);
      }
      this.controls.update();
      this.draw();
      e.preventDefault();
    }
  }

  watchPresses(canvas) {
    let from = null;
    canvas.addEventListener("pointerdown", (e) => (from = [e.clientX, e.clientY]));
    canvas.addEventListener("pointerup", (e) => {
      const still = from && Math.hypot(e.clientX - from[0], e.clientY - from[1]) < STILL;
      from = null;
      if (still && e.button === 0) {
        const box = canvas.getBoundingClientRect();
        this.point(
          ((e.clientX - box.left) / box.width) * 2 - 1,
          1 - ((e.clientY - box.top) / box.height) * 2,
        );
      }
    });
  }

  // Tells who asked for it what lies at a place of the picture: the point in mm in the frame of the
  // file shown, and the outward normal.
  point(x, y) {
    if (!this.pointed || !this.group) {
      return;
    }
    const ray = new THREE.Raycaster();
    ray.setFromCamera(new THREE.Vector2(x, y), this.camera);
    const hit = ray
      .intersectObjects(this.solid(), true)
      .find((h) => this.clip.every((p) => p.distanceToPoint(h.point) > -1e-6));
    if (hit) {
      const at = hit.object.worldToLocal(hit.point.clone());
      this.pointed({ at: at.toArray(), normal: hit.face.normal.toArray(), on: hit.object });
    }
  }

  // What can be pointed at: the casting or model where it shows through, else what is in front.
  solid() {
    const opaque = [];
    this.group.traverse((o) => {
      let shown = o.isMesh && !o.userData.mark;
      for (let p = o; p; p = p.parent) {
        shown &&= p.visible;
      }
      if (shown && o.material.opacity > 0.6) {
        opaque.push(o);
      }
    });
    return opaque;
  }

  async load(address, name) {
    const gltf = await new GLTFLoader().loadAsync(address);
    if (this.group) {
      this.scene.remove(this.group);
      this.group.traverse((o) => o.geometry?.dispose());
    }
    this.group = gltf.scene;
    this.scene.add(this.group);
    this.name = name;
    this.pieces = [];
    this.ball = null;
    this.clip = [];
    this.triangles = 0;
    this.group.traverse((o) => {
      this.triangles += o.isMesh ? o.geometry.index.count / 3 : 0;
    });
  }

  // A model as its file has it, turned by the rows of its frame, in which z is up; y is up here.
  async model(address, name, [a, b, c]) {
    await this.load(address, name);
    const turn = new THREE.Matrix4().set(...a, 0, ...c, 0, ...b.map((v) => -v), 0, 0, 0, 0, 1);
    this.group.quaternion.setFromRotationMatrix(turn);
    this.look();
  }

  // The direction from what is looked at to the eye, in the frame of the file shown.
  toward() {
    const root = this.root();
    root.updateWorldMatrix(true, false);
    const way = this.camera.position.clone().sub(this.controls.target);
    return way.transformDirection(root.matrixWorld.clone().invert()).toArray();
  }

  // A finished mold; the report says in which order and direction pieces leave.
  async mold(address, report, name) {
    await this.load(address, name);
    const casting = new THREE.Box3().setFromObject(this.group.getObjectByName("casting"));
    const size = casting.getSize(new THREE.Vector3());
    for (const p of report.pieces) {
      const node = this.group.getObjectByName(p.name);
      const pull = new THREE.Vector3(...p.pull);
      const box = new THREE.Box3().setFromObject(node).getSize(new THREE.Vector3());
      const along = (v) => Math.abs(pull.x * v.x) + Math.abs(pull.y * v.y) + Math.abs(pull.z * v.z);
      const way = (Math.max(along(size), along(box)) + 0.35 * size.length()) / MM;
      this.pieces.push({ name: p.name, node, pull, way, order: p.order });
    }
    this.pieces.sort((a, b) => a.order - b.order);
    for (const c of report.channels) {
      this.mark(c);
    }
    this.open(0);
    this.look();
  }

  // What marks and tools hang on: mm of the frame of the file shown.
  root() {
    return this.group.getObjectByName("mold") ?? this.group;
  }

  // An arrow at the mouth of a gate or vent.
  mark(channel) {
    const end = new THREE.Vector3(...channel.axis[channel.axis.length - 1]);
    const before = new THREE.Vector3(...channel.axis[channel.axis.length - 2]);
    const out = end.clone().sub(before).normalize();
    const gate = channel.kind === "gate";
    const size = gate ? 14 : 9;
    const shape = new THREE.ConeGeometry(size * 0.32, size, 24);
    const paint = new THREE.MeshStandardMaterial({ color: gate ? 0x0072b2 : 0x009e73 });
    const arrow = new THREE.Mesh(shape, paint);
    arrow.name = channel.kind;
    arrow.userData.mark = true;
    arrow.position.copy(end).addScaledVector(out, size);
    const way = gate ? out.clone().negate() : out;
    arrow.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), way);
    this.root().add(arrow);
  }

  // Puts the pieces where they are at a share of the opening, 0 to 1; returns who moves. The eye
  // keeps its direction and how close it was.
  open(share) {
    const near = this.ball ? this.distance() / this.fitting(this.ball) : 1;
    const n = this.pieces.length;
    let moving = null;
    this.pieces.forEach((p, i) => {
      const own = Math.min(1, Math.max(0, share * n - i));
      p.node.position.copy(p.pull).multiplyScalar(own * p.way);
      if (own > 0) {
        moving = p;
      }
    });
    const ball = this.measure();
    if (this.ball) {
      const way = this.camera.position.clone().sub(this.controls.target).normalize();
      this.controls.target.add(ball.center).sub(this.ball.center);
      this.camera.position
        .copy(this.controls.target)
        .addScaledVector(way, near * this.fitting(ball));
      this.controls.update();
    }
    this.ball = ball;
    this.draw();
    return moving;
  }

  measure() {
    this.group.updateMatrixWorld(true);
    return new THREE.Box3().setFromObject(this.group).getBoundingSphere(new THREE.Sphere());
  }

  distance() {
    return this.camera.position.distanceTo(this.controls.target);
  }

  // How far the eye must stand to see a ball whole.
  fitting(ball) {
    const half = (this.camera.fov / 2) * (Math.PI / 180);
    const narrow = Math.min(half, Math.atan(Math.tan(half) * this.camera.aspect));
    return (ball.radius * CLOSE) / Math.sin(narrow);
  }

  // "shown", "see-through" or "hidden"
  show(name, how) {
    const node = this.group?.getObjectByName(name);
    if (!node) {
      return;
    }
    node.visible = how !== "hidden";
    node.traverse((o) => {
      if (o.material && !o.userData.mark) {
        o.material.transparent = how === "see-through";
        o.material.opacity = how === "see-through" ? SEE_THROUGH : 1;
        o.material.depthWrite = how !== "see-through";
        o.material.needsUpdate = true;
      }
    });
    this.draw();
  }

  look() {
    const ball = this.measure();
    const far = this.fitting(ball);
    const from = new THREE.Vector3(0.55, 0.42, 1).normalize();
    this.camera.position.copy(ball.center).addScaledVector(from, far);
    this.camera.near = far / 200;
    this.camera.far = far * 40;
    this.camera.updateProjectionMatrix();
    this.controls.target.copy(ball.center);
    this.controls.update();
    this.ball = ball;
    this.draw();
  }
}
