// The marks for the seam, as a coat on the part of the casting or model that lies in them.
import * as THREE from "three";
import { MARKS, middle } from "/brush.js";

const FULL = 0.8;

export class Coat {
  constructor(view, tools) {
    this.view = view;
    this.tools = tools;
    this.parts = [];
  }

  // Draws marks; toShare carries a place of the body shown to shares of the model's longest side.
  draw(wishes, toShare) {
    this.clear();
    const mesh = toShare && this.view.group && this.tools.casting();
    if (mesh) {
      const at = places(mesh, toShare);
      for (const w of wishes) {
        const around = middle(w);
        if (around) {
          this.part(mesh, at, around, MARKS[w.mark].color);
        }
      }
    }
    this.view.draw();
  }

  clear() {
    for (const p of this.parts) {
      p.removeFromParent();
      p.geometry.dispose();
      p.material.dispose();
    }
    this.parts = [];
  }

  show(on) {
    this.parts.forEach((p) => (p.visible = on));
    this.view.draw();
  }

  // The facets that come near a mark; what of them lies outside it is left out when they are drawn.
  part(mesh, at, around, color) {
    const from = mesh.geometry;
    const index = from.index;
    const position = from.getAttribute("position");
    const xyz = [];
    const shares = [];
    for (let t = 0; t < index.count; t += 3) {
      const corners = [index.getX(t), index.getX(t + 1), index.getX(t + 2)];
      if (near(at, corners, around)) {
        for (const c of corners) {
          xyz.push(position.getX(c), position.getY(c), position.getZ(c));
          shares.push(at[3 * c], at[3 * c + 1], at[3 * c + 2]);
        }
      }
    }
    const geometry = new THREE.BufferGeometry();
    geometry.setAttribute("position", new THREE.Float32BufferAttribute(xyz, 3));
    geometry.setAttribute("share", new THREE.Float32BufferAttribute(shares, 3));
    const part = new THREE.Mesh(geometry, this.paint(around, color));
    part.name = "coat";
    part.userData.mark = true;
    part.renderOrder = 1;
    mesh.add(part);
    this.parts.push(part);
  }

  paint(around, color) {
    const paint = new THREE.MeshBasicMaterial({
      color, transparent: true, opacity: FULL, depthWrite: false, clippingPlanes: this.view.clip,
      polygonOffset: true, polygonOffsetFactor: -2, polygonOffsetUnits: -2,
    });
    paint.onBeforeCompile = (shader) => {
      shader.uniforms.middle = { value: new THREE.Vector3(...around.center) };
      shader.uniforms.halves = { value: new THREE.Vector3(...around.half) };
      shader.uniforms.round = { value: around.round };
      shader.vertexShader = `attribute vec3 share;\nvarying vec3 at;\n${shader.vertexShader.replace(
        "#include <begin_vertex>", "#include <begin_vertex>\nat = share;",
      )}`;
      shader.fragmentShader = `uniform vec3 middle;\nuniform vec3 halves;\nuniform bool round;\nvarying vec3 at;\n${
        shader.fragmentShader.replace(
          "#include <clipping_planes_fragment>",
          `#include <clipping_planes_fragment>
          vec3 off = abs(at - middle) / halves;
          if (round ? length(off) > 1.0 : max(off.x, max(off.y, off.z)) > 1.0) discard;`,
        )}`;
    };
    return paint;
  }
}

// Where each corner of a body lies, in shares of the model's longest side.
function places(mesh, toShare) {
  const position = mesh.geometry.getAttribute("position");
  const out = new Float32Array(3 * position.count);
  for (let i = 0; i < position.count; i++) {
    out.set(toShare([position.getX(i), position.getY(i), position.getZ(i)]), 3 * i);
  }
  return out;
}

function near(at, corners, { center, half }) {
  for (let k = 0; k < 3; k++) {
    const [a, b, c] = corners.map((i) => at[3 * i + k]);
    if (Math.min(a, b, c) > center[k] + half[k] || Math.max(a, b, c) < center[k] - half[k]) {
      return false;
    }
  }
  return true;
}
