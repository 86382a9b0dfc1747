// Joint angles, forces and the object's way against tension; one cursor for all and for the scrub bar.
import uPlot from '../lib/uPlot.esm.js';
import {css, el, svg} from './dom.js';

/** Height of a curve's name. */
const ROW = 14;
const STYLES = [[2.2, []], [1.2, []], [1.4, [5, 3]], [1.4, [1.5, 2.5]], [1.4, [8, 2.5, 1.5, 2.5]]];

/**
 * @param {string} name
 * @param {number} style of its line
 * @returns {any}
 */
function series(name, style) {
  const [width, dash] = STYLES[style % STYLES.length];
  return {label: name, stroke: () => css('ink'), width, dash, points: {show: false}, styleIndex: style};
}

/** The three graphs. */
export class Plots {
  /**
   * @param {HTMLElement} box
   * @param {(frame: number) => void} chosen told of the moment under the pointer
   */
  constructor(box, chosen) {
    this.box = box;
    this.chosen = chosen;
    /** Moments shown, by their place in the closing. @type {number[]} */
    this.frames = [];
    /** @type {any[]} */
    this.plots = [];
    this.quiet = false;
    /** Called when the graphs have another width. */
    this.resized = () => {};
    new ResizeObserver(() => this.resize()).observe(box);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.plots.forEach(p => p.redraw()));
  }

  /** Takes the width there is. */
  resize() {
    this.plots.forEach(p => p.setSize({width: p.root.parentElement.clientWidth, height: p.height}));
    this.resized();
  }

  /**
   * Draws the graphs of a closing.
   * @param {any} closing
   * @param {any} project
   */
  show(closing, project) {
    this.plots.forEach(p => p.destroy());
    this.plots = [];
    this.box.replaceChildren();
    this.frames = [];
    closing.frames.forEach((f, i) => { if (f.p === 1) this.frames.push(i); });
    if (this.frames.length < 3) {
      this.box.append(el('p', {class: 'small'}, 'The hand did not close, so there are no curves.'));
      return;
    }
    const frames = this.frames.map(i => closing.frames[i]);
    let top = -1;
    // Tension may sink by a hair while the winch settles; the axis needs rising numbers.
    const x = frames.map(f => (top = Math.max(f.t, top + 1e-6)));
    const fingerOf = name => project.fingers.findIndex(f => name.startsWith(f + ' '));
    this.one('joint angles, degrees', x, project.joints.map((name, k) => [series(name, fingerOf(name)), frames.map(f => f.q[k])]), false);
    const pressing = closing.bodies.map((name, k) => [series(name, name === 'palm' ? 4 : fingerOf(name)), frames.map(f => f.f[k])]).filter(([, v]) => Math.max(...v) > 0.05);
    this.one('forces on the object, N', x, pressing, false);
    const start = frames[0].c;
    this.one('object moved, mm', x, [[series('centre of mass', 1), frames.map(f => Math.hypot(f.c[0] - start[0], f.c[1] - start[1], f.c[2] - start[2]))]], true);
  }

  /**
   * One graph.
   * @param {string} title
   * @param {number[]} x tensions
   * @param {any[]} curves series and values
   * @param {boolean} last the one with the axis
   */
  one(title, x, curves, last) {
    const host = el('div');
    const ends = el('div', {class: 'ends'});
    this.box.append(el('div', {class: 'plot'}, el('h3', {}, title), host, ends));
    const axis = {stroke: () => css('ink'), grid: {stroke: () => css('rule'), width: 0.6}, ticks: {show: false}, font: '12px sans-serif', size: 34};
    const height = last ? 138 : 104;
    const plot = new uPlot({
      width: host.clientWidth || 600,
      height,
      legend: {show: false},
      scales: {x: {time: false, range: [0, Math.max(1, x[x.length - 1])]}, y: {range: (_, low, high) => [Math.min(0, low), Math.max(high, title.startsWith('forces') ? 0.1 : 1) * 1.05]}},
      axes: [last ? {...axis, label: 'greatest tendon tension, N', labelSize: 18, labelFont: '12px sans-serif', size: 26} : {...axis, size: 8, values: (_, v) => v.map(() => '')}, {...axis, size: 46}],
      series: [{}, ...curves.map(([s]) => s)],
      cursor: {y: false, drag: {x: false, y: false}, points: {size: 5}, sync: {key: 'tension'}},
      hooks: {ready: [u => this.label(ends, u, curves)], setCursor: [u => {
        if (!this.quiet && u.cursor.idx != null && u.cursor.event) this.chosen(this.frames[u.cursor.idx]);
      }]},
    }, [x, ...curves.map(([, v]) => v)], host);
    this.plots.push(plot);
  }

  /**
   * Names of the curves at their ends, kept apart.
   * @param {HTMLElement} box
   * @param {any} plot
   * @param {any[]} curves
   */
  label(box, plot, curves) {
    const top = plot.bbox.top / devicePixelRatio - ROW / 2;
    const ends = curves.map(([s, v]) => ({s, y: plot.valToPos(v[v.length - 1], 'y') + top})).sort((a, b) => a.y - b.y);
    ends.forEach((e, i) => { e.y = Math.max(e.y, i ? ends[i - 1].y + ROW : -4); });
    for (let i = ends.length - 1, most = plot.height - ROW; i >= 0; i--, most -= ROW) ends[i].y = Math.min(ends[i].y, most);
    box.replaceChildren(...ends.map(({s, y}) => {
      const label = el('span', {}, svg('svg', {width: 24, height: 8, 'aria-hidden': 'true'},
        svg('path', {d: 'M0 4H24', stroke: 'currentColor', 'stroke-width': s.width, 'stroke-dasharray': s.dash.join(' ') || 'none', fill: 'none'})), s.label);
      label.style.top = y + 'px';
      return label;
    }));
  }

  /**
   * Where the axis of tension begins and ends, from the left of the box.
   * @returns {number[]|null}
   */
  span() {
    const over = this.plots[0]?.over;
    if (!over) return null;
    const left = over.getBoundingClientRect().left - this.box.getBoundingClientRect().left;
    return [left, left + over.clientWidth];
  }

  /**
   * Puts the cursor of all plots on a moment of the closing.
   * @param {number} index
   */
  cursor(index) {
    this.quiet = true;
    for (const p of this.plots) {
      let k = this.frames.indexOf(index);
      if (k < 0) k = index < this.frames[0] ? 0 : this.frames.length - 1;
      p.setCursor({left: p.valToPos(p.data[0][k], 'x'), top: 10}, false);
    }
    this.quiet = false;
  }
}
