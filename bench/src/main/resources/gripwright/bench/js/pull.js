// Dimensions of a drawing changed by pulling at their arrowheads.
import {edit, parsed, unquoted, withNumber} from './edit.js';

/** @typedef {import('./types.js').Project} Project */

/** Metres, newtons or radians in one of a unit. @type {Object<string, number>} */
const UNITS = {mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, N: 1, deg: Math.PI / 180, '\u00b0': Math.PI / 180, rad: 1};

/**
 * How much of a value's own unit the way from one point of the drawing to another is worth.
 * @param {DOMStringMap} d what the server says of the arrowhead
 * @param {DOMPoint} from
 * @param {DOMPoint} to
 * @param {string} unit
 * @returns {number}
 */
function worth(d, from, to, unit) {
  if (d.turn !== undefined) {
    const angle = p => Math.atan2(p.y - Number(d.oy), p.x - Number(d.ox));
    let turned = angle(to) - angle(from);
    turned -= 2 * Math.PI * Math.round(turned / (2 * Math.PI));
    return Number(d.turn) * turned / UNITS[unit];
  }
  return ((to.x - from.x) * Number(d.ux) + (to.y - from.y) * Number(d.uy)) / Number(d.per) / UNITS[unit];
}

/**
 * Makes the arrowheads of a drawing ones to pull at. While pulling, the dimension shows its new value; let go, its field
 * opens with it. From the keyboard the same is done with the arrow keys on the value.
 * @param {Element} drawing
 * @param {Project} project
 * @param {(key: string) => void} saved
 */
export function pullable(drawing, project, saved) {
  drawing.querySelectorAll('.grab').forEach(node => {
    const grab = /** @type {SVGCircleElement} */ (node);
    const key = grab.dataset.drag ?? '';
    const old = project.values[key] === undefined ? '' : unquoted(project.values[key]);
    const p = parsed(old);
    const unit = p?.rest.trim().match(/^[^\s+]+/)?.[0] ?? '';
    if (!p || !(unit in UNITS)) {
      grab.remove();
      return;
    }
    grab.setAttribute('aria-hidden', 'true');
    const label = [...drawing.querySelectorAll('[data-key]')].find(n => /** @type {SVGElement} */ (n).dataset.key === key);
    const shown = label?.textContent ?? '';
    const at = e => new DOMPoint(e.clientX, e.clientY).matrixTransform(grab.getScreenCTM()?.inverse());
    /** @type {DOMPoint|null} */
    let start = null;
    let value = old;
    const restore = () => {
      grab.removeAttribute('transform');
      label?.classList.remove('moved');
      if (label) label.textContent = shown;
    };
    grab.addEventListener('pointerdown', e => {
      start = at(e);
      value = old;
      grab.setPointerCapture(e.pointerId);
      e.preventDefault();
    });
    grab.addEventListener('pointermove', e => {
      if (!start) return;
      const now = at(e);
      // Half a unit is as fine as a hand pulls; finer is typed.
      const step = unit === 'm' || unit === 'in' || unit === 'rad' ? 0.01 : p.step < 1 ? 0.5 : 1;
      value = withNumber(old, Math.round((p.number + worth(grab.dataset, start, now, unit)) / step) * step);
      grab.setAttribute('transform', `translate(${now.x - start.x} ${now.y - start.y})`);
      label?.classList.add('moved');
      if (label) label.textContent = '\u0394 ' + value;
    });
    const end = () => {
      if (!start) return;
      start = null;
      grab.removeAttribute('transform');
      if (value === old) restore();
      else edit(key, project, label ?? grab, saved, {value, left: restore});
    };
    grab.addEventListener('pointerup', end);
    grab.addEventListener('pointercancel', () => { start = null; restore(); });
  });
}
