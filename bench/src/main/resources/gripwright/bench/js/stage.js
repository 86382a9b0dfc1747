// The view: hand, object and table, orthographic; drag or arrow keys move the object.
import * as THREE from '../lib/three.module.min.js';
import {css, num, svg} from './dom.js';
import {gathered, pressing} from './forces.js';
import {Ink, handBody, object, pose} from './solids.js';

/** @typedef {import('./types.js').Closing} Closing */
/** @typedef {import('./types.js').Body} Body */
/** @typedef {import('./forces.js').Gathered} Gathered */

const VIEWS = {oblique: [-0.62, -1, 0.62], front: [0, -1, 0], side: [1, 0, 0], top: [0, 0, 1]};
const AXES = {front: ['x', 'z'], side: ['y', 'z'], top: ['x', 'y']};

/** The view of question 3. */
export class Stage {
  /**
   * @param {HTMLElement} box
   * @param {(dx: number, dy: number) => void} moved the object on the table [mm]
   */
  constructor(box, moved) {
    this.box = box;
    this.moved = moved;
    this.view = 'oblique';
    this.ink = new Ink();
    this.renderer = new THREE.WebGLRenderer({antialias: true, alpha: true, preserveDrawingBuffer: true});
    this.renderer.outputColorSpace = THREE.LinearSRGBColorSpace;
    this.renderer.setPixelRatio(Math.min(2, devicePixelRatio || 1));
    this.renderer.domElement.setAttribute('aria-hidden', 'true');
    box.append(this.renderer.domElement);
    this.over = svg('svg', {class: 'fig', 'aria-hidden': 'true'});
    box.append(this.over);
    this.scene = new THREE.Scene();
    this.camera = new THREE.OrthographicCamera(-1, 1, 1, -1, -2000, 4000);
    this.table = this.grid();
    this.scene.add(this.table);
    /** @type {any[]} */
    this.bodies = [];
    /** @type {Body[]} */
    this.bodyData = [];
    /** @type {Closing|null} */
    this.closing = null;
    /** The moment in view. @type {any} */
    this.frame = null;
    this.centre = new THREE.Vector3(0, 0, 60);
    this.half = 150;
    this.cones = false;
    /** Of the closing, for one scale of its arrows [N]. */
    this.mostForce = 1;
    new ResizeObserver(() => this.draw()).observe(box);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => {
      this.ink.read();
      this.paintTaxels();
      this.draw();
    });
    this.dragging();
  }

  /**
   * The table as a 10 mm grid.
   * @returns {any}
   */
  grid() {
    const points = [];
    for (let i = -200; i <= 200; i += 10) points.push(i, -200, 0, i, 200, 0, -200, i, 0, 200, i, 0);
    const geometry = new THREE.BufferGeometry().setAttribute('position', new THREE.Float32BufferAttribute(points, 3));
    return new THREE.LineSegments(geometry, this.ink.thin);
  }

  /**
   * The hand's bodies, in the order of the moments' poses.
   * @param {Body[]} bodies
   */
  setHand(bodies) {
    this.bodies.forEach(b => this.scene.remove(b));
    this.bodies = bodies.map(b => handBody(b, this.ink));
    this.bodies.forEach(b => this.scene.add(b));
    this.bodyData = bodies;
  }

  /**
   * The object's solids.
   * @param {any[]} parts
   */
  setObject(parts) {
    if (this.object) this.scene.remove(this.object);
    this.object = new THREE.Group();
    this.object.add(object(parts, this.ink));
    this.scene.add(this.object);
  }

  /**
   * A closing whose moments can be shown; the frame of the view is kept unless the hand or object is another.
   * @param {Closing} closing
   * @param {boolean} refit
   */
  setClosing(closing, refit) {
    this.closing = closing;
    const cells = closing.taxels;
    if (this.taxels) this.scene.remove(this.taxels);
    this.taxels = new THREE.InstancedMesh(new THREE.PlaneGeometry(1, 1), new THREE.MeshBasicMaterial({side: THREE.DoubleSide, polygonOffset: true, polygonOffsetFactor: -1}), Math.max(1, cells.length));
    this.taxels.frustumCulled = false;
    this.scene.add(this.taxels);
    this.mostForce = Math.max(1e-9, ...[...gathered(closing).values()].map(g => Math.hypot(...g.force)), ...closing.frames.map(f => Math.max(...f.f)));
    if (refit) this.fit(closing);
    this.show(closing.frames.length - 1);
  }

  /**
   * Holds hand and object of all moments.
   * @param {Closing} closing
   */
  fit(closing) {
    const low = new THREE.Vector3(Infinity, Infinity, Infinity);
    const high = new THREE.Vector3(-Infinity, -Infinity, -Infinity);
    for (const f of closing.frames) {
      if (f.p === 0 && f !== closing.frames.at(-1)) continue;
      for (const b of f.b) {
        const p = new THREE.Vector3(b[0], b[1], b[2]);
        low.min(p.clone().addScalar(-45));
        high.max(p.clone().addScalar(45));
      }
    }
    low.z = Math.min(low.z, -10);
    this.centre = low.clone().add(high).multiplyScalar(0.5);
    this.half = 0.5 * Math.max(high.x - low.x, high.y - low.y, high.z - low.z);
  }

  /**
   * Shows a moment.
   * @param {number} index
   */
  show(index) {
    const f = this.closing?.frames[index];
    if (!f) return;
    this.index = index;
    this.frame = f;
    f.b.forEach((p, i) => this.bodies[i] && pose(this.bodies[i], p));
    if (this.object) pose(this.object, f.o);
    this.table.position.z = f.z;
    this.paintTaxels();
    this.draw();
  }

  /** Colours the pressed cells of the pads. */
  paintTaxels() {
    if (!this.taxels || !this.frame || !this.closing) return;
    const pressed = new Map();
    for (let i = 0; i < this.frame.k.length; i += 2) pressed.set(this.frame.k[i], this.frame.k[i + 1]);
    const step = this.closing.step;
    const m = new THREE.Matrix4();
    const body = new THREE.Matrix4();
    const colour = new THREE.Color();
    this.closing.taxels.forEach((t, i) => {
      const [b, x, y, z, nx, ny, nz] = t;
      const kpa = pressed.get(i);
      const n = new THREE.Vector3(nx, ny, nz);
      const across = b === 0 ? new THREE.Vector3(0, 1, 0) : new THREE.Vector3(0, 0, 1);
      const along = across.clone().cross(n);
      const width = this.bodyData[b].size[1];
      const [padLength] = this.bodyData[b].pad;
      const l = kpa ? padLength / 7 * 0.96 : 0;
      const w = kpa ? width / 3 * 0.96 : 0;
      m.makeBasis(along.multiplyScalar(l || 1e-6), across.multiplyScalar(w || 1e-6), n).setPosition(x + 0.3 * nx, y + 0.3 * ny, z + 0.3 * nz);
      const p = this.frame.b[b];
      const c0 = new THREE.Vector3(p[3], p[4], p[5]);
      const c1 = new THREE.Vector3(p[6], p[7], p[8]);
      body.makeBasis(c0, c1, c0.clone().cross(c1)).setPosition(p[0], p[1], p[2]);
      this.taxels.setMatrixAt(i, body.multiply(m));
      colour.setStyle(css('p' + Math.min(7, Math.floor((kpa ?? 0) / step))), THREE.LinearSRGBColorSpace);
      this.taxels.setColorAt(i, colour);
    });
    this.taxels.instanceMatrix.needsUpdate = true;
    if (this.taxels.instanceColor) this.taxels.instanceColor.needsUpdate = true;
  }

  /**
   * Looks from another side.
   * @param {string} name oblique, front, side or top
   */
  setView(name) {
    this.view = name;
    this.draw();
  }

  /** Draws the moment in view. */
  draw() {
    const w = this.box.clientWidth;
    const h = this.box.clientHeight;
    if (!w || !h) return;
    this.renderer.setSize(w, h, false);
    const halfX = this.half * w / Math.min(w, h);
    const halfY = this.half * h / Math.min(w, h);
    Object.assign(this.camera, {left: -halfX, right: halfX, top: halfY, bottom: -halfY});
    const away = new THREE.Vector3(...VIEWS[this.view]).normalize();
    this.camera.up.set(0, this.view === 'top' ? 1 : 0, this.view === 'top' ? 0 : 1);
    this.camera.position.copy(this.centre).addScaledVector(away, 1000);
    this.camera.lookAt(this.centre);
    this.camera.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
    this.ink.hull.uniforms.width.value = 1.2 * halfX / w * 2;
    this.renderer.render(this.scene, this.camera);
    this.overlay(w, h, w / 2 / halfX);
  }

  /**
   * Picture place of a point [mm].
   * @param {number} x
   * @param {number} y
   * @param {number} z
   * @param {number} w width and
   * @param {number} h height of the picture
   * @returns {[number, number]}
   */
  at(x, y, z, w, h) {
    const p = new THREE.Vector3(x, y, z).project(this.camera);
    return [(p.x + 1) / 2 * w, (1 - p.y) / 2 * h];
  }

  /**
   * Scale bar, axes, and at the end the forces on the object.
   * @param {number} w
   * @param {number} h
   * @param {number} perMm
   */
  overlay(w, h, perMm) {
    const bar = 50 * perMm;
    const parts = [
      svg('rect', {class: 'sb1', x: 14, y: h - 16, width: bar / 2, height: 4}),
      svg('rect', {class: 'sb0', x: 14 + bar / 2, y: h - 16, width: bar / 2, height: 4}),
      svg('text', {class: 'l halo', x: 20 + bar, y: h - 11}, '50\u00a0mm'),
    ];
    const [ox, oy] = this.at(this.centre.x, this.centre.y, this.centre.z, w, h);
    /** @type {[string, number[]][]} */
    const axes = [['x', [1, 0, 0]], ['y', [0, 1, 0]], ['z', [0, 0, 1]]];
    for (const [name, d] of axes) {
      const [px, py] = this.at(this.centre.x + d[0], this.centre.y + d[1], this.centre.z + d[2], w, h);
      const ux = (px - ox) / perMm;
      const uy = (py - oy) / perMm;
      if (Math.hypot(ux, uy) < 0.1) continue;
      const bx = w - 58;
      const by = h - 44;
      parts.push(svg('path', {class: 't', d: `M${bx} ${by}L${bx + 28 * ux} ${by + 28 * uy}`}),
        svg('text', {class: 'ax halo', x: bx + 38 * ux, y: by + 38 * uy + 4, 'text-anchor': 'middle'}, name));
    }
    const [nx, ny] = this.at(0, 0, this.frame?.z ?? 0, w, h);
    parts.push(svg('path', {class: 't d', d: `M${nx - 6} ${ny}H${nx + 6}M${nx} ${ny - 6}V${ny + 6}`}));
    if (this.closing) {
      const last = this.closing.frames.length - 1 === this.index;
      parts.push(...this.forces(last ? gathered(this.closing) : pressing(this.closing, this.frame), w, h, perMm));
    }
    this.over.replaceChildren(...parts);
  }

  /**
   * One arrow per body, with its friction cone if that is wanted and known.
   * @param {Map<string, Gathered>} byBody
   * @param {number} w
   * @param {number} h
   * @param {number} perMm
   * @returns {Element[]}
   */
  forces(byBody, w, h, perMm) {
    const most = this.mostForce;
    const scale = 44 / perMm / most;
    const cones = [];
    const out = [];
    const labels = [];
    byBody.forEach((g, name) => {
      const n = Math.hypot(...g.force);
      if (n < 0.03 * most) return;
      if (this.cones && g.friction > 0) cones.push(this.cone(g, 56 / perMm, w, h));
      const [hx, hy] = this.at(...g.at, w, h);
      const [tx, ty] = this.at(g.at[0] - g.force[0] * scale, g.at[1] - g.force[1] * scale, g.at[2] - g.force[2] * scale, w, h);
      const l = Math.hypot(hx - tx, hy - ty);
      if (l <= 8) {
        out.push(svg('circle', {class: 'forcedot', cx: hx, cy: hy, r: 2.4}));
      } else {
        const ux = (hx - tx) / l;
        const uy = (hy - ty) / l;
        out.push(svg('path', {class: 'forceh', d: `M${tx} ${ty}L${hx - 8 * ux} ${hy - 8 * uy}`}),
          svg('path', {class: 'force', d: `M${tx} ${ty}L${hx - 8 * ux} ${hy - 8 * uy}`}),
          svg('path', {class: 'forcehead', d: `M${hx} ${hy}L${hx - 9 * ux - 3.2 * uy} ${hy - 9 * uy + 3.2 * ux}L${hx - 9 * ux + 3.2 * uy} ${hy - 9 * uy - 3.2 * ux}Z`}));
      }
      // Labels that would lie over one another move up.
      let y = ty - 5;
      while (labels.some(([lx, ly]) => Math.abs(lx - tx) < 92 && Math.abs(ly - y) < 14)) y -= 4;
      labels.push([tx, y]);
      out.push(svg('text', {class: 'l halo', x: tx, y, 'text-anchor': 'middle'}, `${name} ${num(n)}\u00a0N`));
    });
    return [...cones, ...out];
  }

  /**
   * How far friction lets a force lean: a cone with its point where the force acts, opening to where it comes from.
   * @param {Gathered} g
   * @param {number} length of its axis [mm]
   * @param {number} w
   * @param {number} h
   * @returns {Element}
   */
  cone(g, length, w, h) {
    const axis = new THREE.Vector3(...g.direction).normalize();
    const one = new THREE.Vector3(Math.abs(axis.x) < 0.8 ? 1 : 0, Math.abs(axis.x) < 0.8 ? 0 : 1, 0).cross(axis).normalize();
    const two = axis.clone().cross(one);
    const centre = new THREE.Vector3(...g.at).addScaledVector(axis, -length);
    const [px, py] = this.at(...g.at, w, h);
    const [cx, cy] = this.at(centre.x, centre.y, centre.z, w, h);
    const along = Math.atan2(cy - py, cx - px);
    const rim = Array.from({length: 40}, (_, i) => {
      const a = i / 20 * Math.PI;
      const q = centre.clone().addScaledVector(one, length * g.friction * Math.cos(a)).addScaledVector(two, length * g.friction * Math.sin(a));
      return this.at(q.x, q.y, q.z, w, h);
    });
    /** @param {[number, number]} p */
    const lean = ([x, y]) => {
      const d = Math.atan2(y - py, x - px) - along;
      return d - 2 * Math.PI * Math.round(d / (2 * Math.PI));
    };
    const sides = [...rim].sort((a, b) => lean(a) - lean(b));
    /** @param {[number, number]} p */
    const line = ([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`;
    return svg('path', {class: 'cone', d: 'M' + rim.map(line).join('L') + `ZM${line(sides[0])}L${line([px, py])}L${line(sides[sides.length - 1])}`});
  }

  /** The pointer's way on the table: exact from above, else along the ground under it. */
  dragging() {
    let last = null;
    const ground = e => {
      const box = this.box.getBoundingClientRect();
      const ndc = new THREE.Vector2((e.clientX - box.left) / box.width * 2 - 1, 1 - (e.clientY - box.top) / box.height * 2);
      const ray = new THREE.Raycaster();
      ray.setFromCamera(ndc, this.camera);
      const {origin, direction} = ray.ray;
      if (this.view === 'front') return [origin.x, 0];
      if (this.view === 'side') return [0, origin.y];
      const t = -origin.z / direction.z;
      return [origin.x + t * direction.x, origin.y + t * direction.y];
    };
    this.box.addEventListener('pointerdown', e => {
      last = ground(e);
      this.box.setPointerCapture(e.pointerId);
      this.box.focus({preventScroll: true});
    });
    this.box.addEventListener('pointermove', e => {
      if (!last) return;
      const now = ground(e);
      this.moved(now[0] - last[0], now[1] - last[1]);
      last = now;
    });
    const end = () => { last = null; };
    this.box.addEventListener('pointerup', end);
    this.box.addEventListener('pointercancel', end);
  }
}
