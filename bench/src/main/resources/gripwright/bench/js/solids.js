// Solids of hand and objects for the view [mm], matt and with ink edges.
import * as THREE from '../lib/three.module.min.js';
import {css} from './dom.js';

/** Three tones by the way a face is turned, and ink; read anew when the ground changes. */
export class Ink {
  /** Makes the materials in the colours of the page. */
  constructor() {
    this.uniforms = {t1: {value: new THREE.Color()}, t2: {value: new THREE.Color()}, t3: {value: new THREE.Color()}};
    this.rubber = {t1: {value: new THREE.Color()}, t2: {value: new THREE.Color()}, t3: {value: new THREE.Color()}};
    this.object = {t1: {value: new THREE.Color()}, t2: {value: new THREE.Color()}, t3: {value: new THREE.Color()}};
    this.face = Ink.material(this.uniforms);
    this.pad = Ink.material(this.rubber);
    this.body = Ink.material(this.object);
    this.line = new THREE.LineBasicMaterial();
    this.thin = new THREE.LineBasicMaterial();
    this.hull = new THREE.ShaderMaterial({
      side: THREE.BackSide,
      uniforms: {ink: {value: new THREE.Color()}, width: {value: 1}},
      vertexShader: 'uniform float width; void main(){ vec3 n = normalize(normalMatrix * normal); vec4 p = modelViewMatrix * vec4(position, 1.0); p.xyz += n * width; gl_Position = projectionMatrix * p; }',
      fragmentShader: 'uniform vec3 ink; void main(){ gl_FragColor = vec4(ink, 1.0); }',
    });
    this.read();
  }

  /**
   * A matt material of three tones.
   * @param {any} uniforms
   * @returns {any}
   */
  static material(uniforms) {
    return new THREE.ShaderMaterial({
      uniforms,
      side: THREE.DoubleSide,
      polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1,
      vertexShader: 'varying vec3 n; void main(){ n = normalize(normalMatrix * normal); gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
      fragmentShader: 'varying vec3 n; uniform vec3 t1; uniform vec3 t2; uniform vec3 t3; void main(){ vec3 m = normalize(n); if (m.z < 0.0) m = -m; float d = m.z * 0.8 + m.y * 0.5 - m.x * 0.33; gl_FragColor = vec4(d > 0.6 ? t1 : d > 0.15 ? t2 : t3, 1.0); }',
    });
  }

  /** The colours of the page. Shaders write them as they are, so no change of colour space is wanted. */
  read() {
    const raw = (target, name) => target.setStyle(css(name), THREE.LinearSRGBColorSpace);
    raw(this.uniforms.t1.value, 'face1');
    raw(this.uniforms.t2.value, 'face2');
    raw(this.uniforms.t3.value, 'face3');
    for (const t of ['t1', 't2', 't3']) raw(this.rubber[t].value, 'rubber');
    raw(this.object.t1.value, 'face2');
    raw(this.object.t2.value, 'face3');
    raw(this.object.t3.value, 'rule');
    raw(this.hull.uniforms.ink.value, 'ink');
    raw(this.line.color, 'ink');
    raw(this.thin.color, 'grid');
  }
}

/** Faces and the edges between faces that meet at more than 30 degrees. */
function solid(geometry, material, ink) {
  const group = new THREE.Group();
  group.add(new THREE.Mesh(geometry, material), new THREE.LineSegments(new THREE.EdgesGeometry(geometry, 30), ink.line));
  return group;
}

function prism(points, half, material, ink) {
  const outline = new THREE.Shape(points.map(([x, y]) => new THREE.Vector2(x, y)));
  const geometry = new THREE.ExtrudeGeometry(outline, {depth: 2 * half, bevelEnabled: false});
  geometry.translate(0, 0, -half);
  return solid(geometry, material, ink);
}

function arc(x, r, from, to, pieces = 8) {
  return Array.from({length: pieces + 1}, (_, i) => {
    const a = (from + (to - from) * i / pieces) * Math.PI / 180;
    return [x + r * Math.cos(a), r * Math.sin(a)];
  });
}

/**
 * One body of the hand, in its own frame: x along it, y out of the pad (the palm: z out of the pad).
 * @param {import('./types.js').Body} body
 * @param {Ink} ink
 * @returns {any}
 */
export function handBody(body, ink) {
  const group = new THREE.Group();
  const [length, width, bone] = body.size;
  const [padLength, thickness] = body.pad;
  if (body.name === 'palm') {
    const plate = new THREE.BoxGeometry(length, width, bone);
    plate.translate(0, 0, -thickness - bone / 2);
    const pad = new THREE.BoxGeometry(padLength, width, thickness);
    pad.translate(0, 0, -thickness / 2);
    group.add(solid(plate, ink.face, ink), solid(pad, ink.pad, ink));
    return group;
  }
  const r = bone / 2;
  const start = Math.max(0, (length - padLength) / 2);
  const back = arc(0, r, 90, 270);
  group.add(prism(body.round ? [...back, ...arc(length, r, -90, 90)] : [...back, [length, -r], [length, r]], width / 2, ink.face, ink));
  const pad = body.round
    ? [[start, r], ...arc(length, r, 90, 0), ...arc(length, r + thickness, 0, 90), [start, r + thickness]]
    : [[start, r], [start + padLength, r], [start + padLength, r + thickness], [start, r + thickness]];
  group.add(prism(pad, width / 2, ink.pad, ink));
  return group;
}

/**
 * The parts of an object. Round ones get their outline from a slightly larger back.
 * @param {any[]} parts
 * @param {Ink} ink
 * @returns {any}
 */
export function object(parts, ink) {
  const group = new THREE.Group();
  for (const part of parts) {
    let geometry;
    let round = true;
    if (part.box) {
      geometry = new THREE.BoxGeometry(2 * part.box[0], 2 * part.box[1], 2 * part.box[2]);
      round = false;
    } else if (part.triangles) {
      geometry = new THREE.BufferGeometry();
      geometry.setAttribute('position', new THREE.Float32BufferAttribute(part.triangles, 3));
      geometry.computeVertexNormals();
      round = false;
    } else if (part.ellipsoid) {
      geometry = new THREE.SphereGeometry(1, 40, 24);
      geometry.scale(...part.ellipsoid);
    } else {
      const points = [];
      for (let i = 0; i < part.turned.length; i += 2) points.push(new THREE.Vector2(part.turned[i], part.turned[i + 1]));
      if (part.closed) points.push(points[0].clone());
      geometry = new THREE.LatheGeometry(points, 48);
      geometry.rotateX(Math.PI / 2); // three turns about y
    }
    const one = solid(geometry, ink.body, ink);
    if (round) one.add(new THREE.Mesh(geometry, ink.hull));
    pose(one, part.at);
    group.add(one);
  }
  return group;
}

/**
 * Puts a thing where nine numbers say: place and two columns of its rotation.
 * @param {any} thing
 * @param {number[]} p
 */
export function pose(thing, p) {
  const x = new THREE.Vector3(p[3], p[4], p[5]);
  const y = new THREE.Vector3(p[6], p[7], p[8]);
  thing.matrixAutoUpdate = false;
  thing.matrix.makeBasis(x, y, x.clone().cross(y)).setPosition(p[0], p[1], p[2]);
  thing.matrixWorldNeedsUpdate = true;
}
