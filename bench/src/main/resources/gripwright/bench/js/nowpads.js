// The pads as they lie on the hand: a bar for each taxel, up from its zero, with one scale for all.
import {num, svg} from './dom.js';

const LEFT = 54;
const TALL = 68;
/** Of a row where there are many. */
const LOW = 44;
const MANY = 6;
const BELOW = 1 / 3;
const HEAD = 20;
const FOOT = 18;
const GAP = 14;
const NARROW = 30;
const GLYPHS = {r: '!', w: '!', n: '?', s: '='};

/**
 * The smallest of 1, 1.5, 2, 3, 5 or 7 x 10^n that is not below a value.
 * @param {number} value
 * @returns {number}
 */
export function nice(value) {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return [1, 1.5, 2, 3, 5, 7, 10].map(k => k * power).find(w => w >= value * (1 - 1e-9)) ?? 10 * power;
}

/** The drawing. */
export class NowPads {
  /**
   * @param {HTMLElement} box
   * @param {(column: string) => void} chosen told of the taxel that is clicked or reached by arrow keys
   */
  constructor(box, chosen) {
    this.box = box;
    this.chosen = chosen;
    /** @type {any} */
    this.layout = null;
    /** @type {any[]} */
    this.cells = [];
    /** @type {any[]} */
    this.scales = [];
    this.scale = 0;
    this.band = TALL;
    this.width = 0;
    /** @type {any[]} */
    this.last = [];
    new ResizeObserver(() => {
      if (this.layout && box.clientWidth && Math.abs(box.clientWidth - this.width) > 1) {
        this.build(this.layout);
        if (this.last.length) this.show(this.last[0], this.last[1], this.last[2]);
      }
    }).observe(box);
    box.addEventListener('click', e => {
      const at = /** @type {Element} */ (e.target).getAttribute?.('data-cell');
      if (at !== null && at !== undefined) this.chosen(this.layout.taxels[Number(at)][0]);
    });
    box.addEventListener('keydown', e => this.key(e));
  }

  /**
   * To the taxel beside, or to the nearest one of the row above or below.
   * @param {KeyboardEvent} e
   */
  key(e) {
    /** @type {Object<string, number[]>} */
    const ways = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]};
    const way = ways[e.key];
    const from = this.cells.find(c => c.column === this.last[2]);
    if (!way || e.ctrlKey || e.metaKey || e.altKey || !from) return;
    e.preventDefault();
    const beyond = this.cells.filter(c => (way[0] ? c.top === from.top && (c.x - from.x) * way[0] > 0 : (c.top - from.top) * way[1] > 0));
    const far = c => (way[0] ? Math.abs(c.x - from.x) : 1e4 * Math.abs(c.top - from.top) + Math.abs(c.x - from.x));
    beyond.sort((a, b) => far(a) - far(b));
    if (beyond.length) this.chosen(beyond[0].column);
  }

  /** The scale fits itself anew. */
  rescale() {
    this.scale = 0;
  }

  /**
   * Draws what does not change.
   * @param {any} layout
   */
  build(layout) {
    if (layout !== this.layout) this.rescale();
    this.layout = layout;
    const rowsOf = line => Math.max(...line.cells.map(c => c.row)) + 1;
    this.band = layout.lines.reduce((sum, line) => sum + rowsOf(line), 0) > MANY ? LOW : TALL;
    this.cells = [];
    this.scales = [];
    this.width = this.box.clientWidth || 900;
    const reach = line => line.cells.map(c => [c.x - c.pitch / 2, c.x + c.pitch / 2]).concat(line.bodies);
    const spans = layout.lines.map(line => [Math.min(...reach(line).map(r => r[0])), Math.max(...reach(line).map(r => r[1]))]);
    const longest = Math.max(...spans.map(([from, to]) => to - from), 60);
    const perMm = (this.width - LEFT - 6) / longest;
    const parts = [];
    let y = 0;
    layout.lines.forEach((line, k) => {
      const x = mm => LEFT + (mm - spans[k][0]) * perMm;
      const rows = rowsOf(line);
      const lowest = new Map();
      for (const c of line.cells) lowest.set(layout.taxels[c.i][1], Math.max(c.row, lowest.get(layout.taxels[c.i][1]) ?? 0));
      const height = rows * this.band;
      const towards = line.bodies.length && line.name !== 'palm' ? svg('tspan', {class: 'towards', dx: 8}, 'palm at the left, tip at the right') : '';
      parts.push(svg('text', {class: 'l b', x: LEFT, y: y + 13}, line.name, towards));
      const top = y + HEAD;
      for (const [from, to] of line.bodies) parts.push(svg('rect', {class: 'nowbody', x: x(from) + 1, y: top - 3, width: Math.max(1, (to - from) * perMm - 2), height: height + 6, rx: 6}));
      for (let row = 0; row < rows; row++) {
        const zero = top + row * this.band + this.band / (1 + BELOW);
        if (row > 0) continue; // all rows have the same scale
        const high = svg('text', {class: 'lq', x: LEFT - 8, y: top + row * this.band + 10, 'text-anchor': 'end'});
        this.scales.push(high);
        parts.push(high, svg('text', {class: 'lq', x: LEFT - 8, y: zero + 4, 'text-anchor': 'end'}, '0'),
          svg('path', {class: 'gl', d: `M${LEFT - 5} ${top + row * this.band}H${LEFT}M${LEFT - 5} ${zero}H${LEFT}`}));
      }
      for (const c of line.cells) this.cell(parts, c, x(c.x), c.pitch * perMm, top + c.row * this.band, c.row === lowest.get(layout.taxels[c.i][1]));
      y = top + height + FOOT + GAP;
    });
    this.chosenRect = svg('rect', {class: 'chosen', rx: 2});
    this.box.replaceChildren(svg('svg', {class: 'fig', viewBox: `0 0 ${this.width} ${Math.max(1, y)}`, width: this.width, height: y, role: 'img', 'aria-label': 'Last value of each taxel above its zero, as the pads lie on the hand'}, ...parts, this.chosenRect));
  }

  /**
   * One taxel.
   * @param {any[]} parts
   * @param {any} c
   * @param {number} x
   * @param {number} pitch
   * @param {number} top
   * @param {boolean} named its name stands under it, if there is room
   */
  cell(parts, c, x, pitch, top, named) {
    const width = Math.max(1.5, Math.min(26, pitch * 0.72));
    const zero = top + this.band / (1 + BELOW);
    const column = this.layout.taxels[c.i][0];
    const bar = svg('rect', {class: 'nowbar', x: x - width / 2, width});
    const glyph = svg('text', {class: 'n nowmark', x, y: top + 12, 'text-anchor': 'middle'});
    parts.push(svg('rect', {class: 'nowcell', x: x - width / 2, y: top, width, height: this.band}), bar,
      svg('path', {class: 'nowzero', d: `M${x - pitch / 2} ${zero}H${x + pitch / 2}`}), glyph);
    if (named && pitch >= NARROW) parts.push(svg('text', {class: 'lq', x, y: top + this.band + FOOT - 3, 'text-anchor': 'middle'}, column.length > 7 ? column.slice(0, 6) + '\u2026' : column));
    parts.push(svg('rect', {class: 'click', x: x - pitch / 2, y: top, width: pitch, height: this.band, 'data-cell': c.i}));
    this.cells[c.i] = {column, x, top, width, zero, bar, glyph, pitch};
  }

  /**
   * Draws a state.
   * @param {import('./types.js').NowState} s
   * @param {(number|null)[]} changes by taxel
   * @param {string} taxel that is chosen
   */
  show(s, changes, taxel) {
    this.last = [s, changes, taxel];
    const most = Math.max(0, ...changes.filter((v, i) => v !== null && !'rw'.includes(s.marks[i])).map(v => Math.max(Number(v), -Number(v) / BELOW)));
    if (most > this.scale) {
      this.scale = nice(1.2 * most); // a little room, so that noise at the top does not double the scale
      const unit = this.layout.unit;
      this.scales.forEach(text => { text.textContent = num(this.scale, 3); });
      const note = document.getElementById('now-scale');
      if (note) note.textContent = `A full bar is ${num(this.scale, 3)}${unit ? '\u00a0' + unit : ''} above a taxel's zero.`;
    } else if (this.scale && this.scales[0]?.textContent === '') {
      this.scales.forEach(text => { text.textContent = num(this.scale, 3); });
    }
    const up = this.band / (1 + BELOW);
    this.cells.forEach((c, i) => {
      const v = changes[i];
      const share = v === null || !this.scale ? 0 : Math.max(-BELOW, Math.min(1, v / this.scale));
      const height = Math.max(v === null ? 0 : 0.8, Math.abs(share) * up);
      c.bar.setAttribute('y', String(share < 0 ? c.zero : c.zero - height));
      c.bar.setAttribute('height', String(height));
      c.bar.setAttribute('class', 'nowbar ' + colour(Math.min(7, Math.floor(8 * Math.abs(share)))));
      c.glyph.textContent = GLYPHS[s.marks[i]] ?? '';
    });
    const c = this.cells.find(one => one.column === taxel);
    if (this.chosenRect) {
      for (const [k, v] of Object.entries(c ? {x: c.x - c.width / 2 - 3, y: c.top - 1, width: c.width + 6, height: this.band + 2} : {width: 0, height: 0})) this.chosenRect.setAttribute(k, String(v));
    }
  }
}

/**
 * Class of a step of the pressure scale.
 * @param {number} k
 * @returns {string}
 */
const colour = k => (k === 2 ? 'k2x' : 'k' + k);
