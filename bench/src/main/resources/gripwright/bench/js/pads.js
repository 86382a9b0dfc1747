// The pads unrolled, cell by cell, with the fixed scale of the closing.
import {num, svg, el} from './dom.js';

/**
 * The smallest class width of 1, 2, 2.5 or 5 x 10^n kPa by which eight classes hold the whole closing.
 * @param {import('./types.js').Closing} closing
 * @returns {number}
 */
export function classWidth(closing) {
  let most = 0.1;
  for (const f of closing.frames) for (let i = 1; i < f.k.length; i += 2) most = Math.max(most, f.k[i]);
  const power = 10 ** Math.floor(Math.log10(most / 8));
  return [1, 2, 2.5, 5, 10].map(k => k * power).find(w => 8 * w >= most) ?? 10 * power;
}

const colour = k => (k === 2 ? 'k2x' : 'k' + k);

/**
 * Draws all pads at a moment, and the legend.
 * @param {HTMLElement} box
 * @param {import('./types.js').Closing} closing
 * @param {number} index of the moment
 * @param {import('./types.js').Body[]} bodies
 */
export function drawPads(box, closing, index, bodies) {
  const frame = closing.frames[index];
  const pressed = new Map();
  for (let i = 0; i < frame.k.length; i += 2) pressed.set(frame.k[i], frame.k[i + 1]);
  const parts = [];
  let y = 12;
  bodies.forEach((body, b) => {
    const cells = closing.taxels.map((t, i) => [t, i]).filter(([t]) => t[0] === b);
    if (!cells.length) return;
    const force = frame.f[b];
    let peak = 0;
    const along = cells.map(([t]) => (b === 0 ? t[1] : t[1] + 30 * Math.max(0, t[4])));
    const across = cells.map(([t]) => (b === 0 ? t[2] : t[3]));
    const lowA = Math.min(...along);
    const spanA = Math.max(...along) - lowA || 1;
    const lowC = Math.min(...across);
    const spanC = Math.max(...across) - lowC || 1;
    parts.push(svg('text', {class: 'l b', x: 0, y}, body.name));
    const label = svg('text', {class: 'lq', x: 250, y, 'text-anchor': 'end'});
    parts.push(label);
    cells.forEach(([, i], k) => {
      const kpa = pressed.get(i) ?? 0;
      peak = Math.max(peak, kpa);
      // Cells come along the pad, three across; a pad of few points has fewer, which then stand where they are.
      const full = cells.length === 21;
      const col = full ? Math.floor(k / 3) : Math.min(6, Math.floor((along[k] - lowA) / spanA * 6.999));
      const row = full ? k % 3 : Math.min(2, Math.floor((across[k] - lowC) / spanC * 2.999));
      parts.push(svg('rect', {class: 'pz' + (kpa > 0 ? ' ' + colour(Math.min(7, Math.floor(kpa / closing.step))) : ''), x: col * 35.7, y: y + 5 + row * 10, width: 35.7, height: 10}));
    });
    label.textContent = force > 0.005 || peak > 0 ? `${num(force)}\u00a0N, peak ${num(peak)}\u00a0kPa` : 'not touching';
    y += 54;
  });
  for (let k = 0; k < 8; k++) {
    parts.push(svg('rect', {class: colour(k), x: k * 31, y, width: 31, height: 10}));
    if (k % 2 === 0 && k < 6) parts.push(svg('text', {class: 'l', x: k * 31, y: y + 24}, num(k * closing.step, 2)));
  }
  parts.push(svg('text', {class: 'l', x: 250, y: y + 24, 'text-anchor': 'end'}, num(8 * closing.step, 2) + '\u00a0kPa'));
  box.replaceChildren(el('div', {class: 'padtitle'}, 'pads unrolled, palm side at the left'),
    svg('svg', {class: 'fig', viewBox: `0 -6 250 ${y + 34}`, role: 'img', 'aria-label': 'Pressure on each pad'}, ...parts));
}
