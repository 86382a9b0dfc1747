// Forces of the hand on the object, body by body.
import * as THREE from '../lib/three.module.min.js';

/** @typedef {import('./types.js').Closing} Closing */

/**
 * What one body does to the object at the end.
 * @typedef {object} Gathered
 * @property {[number, number, number]} force on the object [N]
 * @property {[number, number, number]} at where it acts, the mean of its contacts weighed by their force [mm]
 * @property {[number, number, number]} direction sum of the normal forces, into the object
 * @property {number} normal sum of their sizes [N]
 * @property {number} sideways size of the force along the surface [N]
 * @property {number} friction mean coefficient
 * @property {number} used share of the friction in use, contact by contact
 */

/**
 * The contacts at the end, gathered by body.
 * @param {Closing|null|undefined} closing
 * @returns {Map<string, Gathered>}
 */
export function gathered(closing) {
  /** @type {Map<string, Gathered & {weight: number, most: number, rub: number, slide: number[]}>} */
  const byBody = new Map();
  for (const c of closing?.contacts ?? []) {
    const [x, y, z, fx, fy, fz, nx, ny, nz, mu, name] = c;
    const g = byBody.get(name) ?? {force: [0, 0, 0], at: [0, 0, 0], direction: [0, 0, 0], normal: 0, sideways: 0, friction: 0, used: 0, weight: 0, most: 0, rub: 0, slide: [0, 0, 0]};
    const force = [fx, fy, fz];
    const normal = [nx, ny, nz];
    const press = fx * nx + fy * ny + fz * nz;
    const slide = force.map((f, i) => f - press * normal[i]);
    const size = Math.hypot(...force);
    [x, y, z].forEach((v, i) => {
      g.force[i] += force[i];
      g.at[i] += v * size;
      g.direction[i] += press * normal[i];
      g.slide[i] += slide[i];
    });
    g.weight += size;
    g.normal += press;
    g.most += mu * press;
    g.rub += Math.hypot(...slide);
    byBody.set(name, g);
  }
  byBody.forEach((g, name) => {
    if (g.weight < 1e-9) {
      byBody.delete(name);
      return;
    }
    g.at = [g.at[0] / g.weight, g.at[1] / g.weight, g.at[2] / g.weight];
    g.sideways = Math.hypot(...g.slide);
    g.friction = g.normal > 0 ? g.most / g.normal : 0;
    g.used = g.most > 0 ? Math.min(1, g.rub / g.most) : 0;
  });
  return byBody;
}

/**
 * What each body presses with at a moment on the way, from the cells of its pad; friction is known at the end only.
 * @param {Closing} closing
 * @param {import('./types.js').Frame} frame
 * @returns {Map<string, Gathered>}
 */
export function pressing(closing, frame) {
  /** @type {Map<string, Gathered & {weight: number}>} */
  const byBody = new Map();
  for (let i = 0; i < frame.k.length; i += 2) {
    const [b, x, y, z, nx, ny, nz, area] = closing.taxels[frame.k[i]];
    const p = frame.b[b];
    const one = new THREE.Vector3(p[3], p[4], p[5]);
    const two = new THREE.Vector3(p[6], p[7], p[8]);
    const body = new THREE.Matrix4().makeBasis(one, two, one.clone().cross(two)).setPosition(p[0], p[1], p[2]);
    const at = new THREE.Vector3(x, y, z).applyMatrix4(body).toArray();
    const normal = new THREE.Vector3(nx, ny, nz).transformDirection(body).toArray();
    const n = frame.k[i + 1] * area * 1e-3; // kPa on mm2
    const name = closing.bodies[b];
    const g = byBody.get(name) ?? {force: [0, 0, 0], at: [0, 0, 0], direction: [0, 0, 0], normal: 0, sideways: 0, friction: 0, used: 0, weight: 0};
    for (let k = 0; k < 3; k++) {
      g.force[k] += n * normal[k];
      g.at[k] += n * at[k];
    }
    g.weight += n;
    byBody.set(name, g);
  }
  byBody.forEach((g, name) => {
    if (g.weight < 1e-9) byBody.delete(name);
    else g.at = [g.at[0] / g.weight, g.at[1] / g.weight, g.at[2] / g.weight];
  });
  return byBody;
}
