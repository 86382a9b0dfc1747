// The last ten seconds of the chosen taxel, and of the reference load cell if there is one.
import uPlot from '../lib/uPlot.esm.js';
import {css, el} from './dom.js';

const SECONDS = 10;
/** An empty stretch that long is drawn as a gap [s]. */
const GAP = 1;
const HEIGHT = 130;

/**
 * Strips as points; those without a reading are left out, unless there are many.
 * @param {{low: (number|null)[], high: (number|null)[]}} curve
 * @param {number} width of a strip [s]
 * @param {number} zero that is taken off
 * @returns {any[]} times before the newest, lowest, highest
 */
export function points(curve, width, zero) {
  const x = [];
  const low = [];
  const high = [];
  const n = curve.low.length;
  let empty = 0;
  for (let i = 0; i < n; i++) {
    const l = curve.low[i];
    const h = curve.high[i];
    if (l === null || h === null) {
      empty++;
      if (empty === Math.round(GAP / width)) {
        x.push((i - n + 1) * width);
        low.push(null);
        high.push(null);
      }
    } else {
      empty = 0;
      x.push((i - n + 1) * width);
      low.push(l - zero);
      high.push(h - zero);
    }
  }
  return [x, low, high];
}

/** The curves. */
export class NowCurves {
  /** @param {HTMLElement} box */
  constructor(box) {
    this.box = box;
    /** @type {Map<string, {plot: any, title: HTMLElement, host: HTMLElement}>} */
    this.plots = new Map();
    new ResizeObserver(() => this.plots.forEach(({plot, host}) => plot.setSize({width: host.clientWidth || 600, height: HEIGHT}))).observe(box);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.plots.forEach(({plot}) => plot.redraw()));
  }

  /** Begins anew: another log. */
  clear() {
    this.plots.forEach(({plot}) => plot.destroy());
    this.plots.clear();
    this.box.replaceChildren();
  }

  /**
   * Draws a state.
   * @param {import('./types.js').NowState} s
   * @param {any} layout
   * @param {string} taxel
   * @param {number|null} zero of the taxel
   */
  show(s, layout, taxel, zero) {
    const unit = name => (name ? ', ' + name : '');
    if (s.curves[taxel]) this.one('taxel', `${taxel} above its zero${unit(layout.unit)}`, points(s.curves[taxel], s.width, zero ?? 0));
    if (layout.force && s.curves[layout.force]) this.one('force', `${layout.force}, the load cell${unit(layout.units[layout.force])}`, points(s.curves[layout.force], s.width, 0));
  }

  /**
   * One graph, made when it is first needed.
   * @param {string} key
   * @param {string} title
   * @param {any[]} data
   */
  one(key, title, data) {
    let known = this.plots.get(key);
    if (!known) {
      const host = el('div', {role: 'img'});
      const heading = el('h3');
      const figure = el('div', {class: 'nowplot'}, heading, host);
      if (key === 'taxel') this.box.prepend(figure);
      else this.box.append(figure);
      const axis = {stroke: () => css('ink'), grid: {stroke: () => css('rule'), width: 0.6}, ticks: {show: false}, font: '12px sans-serif'};
      const line = {stroke: () => css('ink'), width: 1, points: {show: false}};
      const plot = new uPlot({
        width: host.clientWidth || 600,
        height: HEIGHT,
        legend: {show: false},
        cursor: {show: false},
        scales: {x: {time: false, range: [-SECONDS, 0]}, y: {range: (_, low, high) => within(low, high)}},
        axes: [{...axis, size: 26, values: (_, v) => v.map(t => (t === 0 ? 'now' : `\u2212${-t}\u00a0s`))}, {...axis, size: 62, space: 24, values: (_, v) => v.map(t => String(+t.toPrecision(7)).replace('-', '\u2212'))}],
        series: [{}, line, line],
        bands: [{series: [2, 1], fill: () => css('edge')}],
      }, data, host);
      known = {plot, title: heading, host};
      this.plots.set(key, known);
    } else {
      known.plot.setData(data);
    }
    if (known.title.textContent !== title) {
      known.title.textContent = title;
      known.host.setAttribute('aria-label', title + ', the last 10 seconds');
    }
  }
}

/**
 * A range that is never empty.
 * @param {number|null} low
 * @param {number|null} high
 * @returns {number[]}
 */
function within(low, high) {
  if (low === null || high === null) return [0, 1];
  const room = Math.max(0.08 * (high - low), 1e-6 * Math.max(Math.abs(low), Math.abs(high)), 1e-6);
  return [low - room, high + room];
}
