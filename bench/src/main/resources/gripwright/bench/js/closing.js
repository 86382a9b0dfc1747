// Question 3: one closing in view, its scrub bar, curves, pads and forces, and how sure it is.
import {Refused, get} from './api.js';
import {$, csv, el, fault, mark, num, offer, percent, scrolled} from './dom.js';
import {gathered} from './forces.js';
import {classWidth, drawPads} from './pads.js';
import {Plots} from './plots.js';

/** @typedef {import('./types.js').Closing} Closing */
/** @typedef {import('./types.js').Page} Page */
/** @typedef {import('./stage.js').Stage} Stage */

const PHASES = ['coming in', 'closing', 'lifting'];
/** After so long at rest the page asks how sure the answer is [ms]. */
const SURE_REST = 350;
const SHOWN_SECONDS = 2.6;

/** Room on the bar for coming in and for lifting, as shares of the tension's part. */
const SIDE = 0.06;
/** Width of the bar's knob [px]. */
const THUMB = 16;

/**
 * Where each moment stands on the bar.
 * @param {Closing} c
 * @returns {number[]}
 */
function places(c) {
  const most = Math.max(1e-9, ...c.frames.filter(f => f.p === 1).map(f => f.t));
  const count = p => Math.max(1, c.frames.filter(f => f.p === p).length);
  const seen = [0, 0, 0];
  let last = 0;
  return c.frames.map(f => {
    const i = seen[f.p]++;
    if (f.p === 0) return -SIDE + SIDE * i / count(0);
    if (f.p === 2) return 1 + SIDE * (i + 1) / count(2);
    last = Math.max(last, f.t / most);
    return last;
  });
}

/** What is shown of one closing. */
export class ClosingView {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    /** @type {Stage|null} */
    this.stage = null;
    this.name = crypto.randomUUID();
    this.number = 0;
    this.refit = false;
    this.playing = 0;
    this.sureTimer = 0;
    /** Measured by the page itself, for whoever wants to know: request to final state drawn [ms]. @type {number[]} */
    this.times = [];
    this.plots = new Plots($('plots'), index => this.showFrame(index, true));
    /** Where each moment stands on the bar: tension from 0 to 1; coming in before it, lifting after it. @type {number[]} */
    this.bar = [];
    this.index = 0;
    this.plots.resized = () => this.align();
    $('scrub').addEventListener('input', () => this.showFrame(this.nearest(Number($('scrub').value))));
    $('scrub').addEventListener('keydown', e => this.scrubKeys(e));
    $('play').addEventListener('click', () => this.play());
    $('cones').addEventListener('click', () => this.cones());
    $('forces-csv').addEventListener('click', () => offer('forces.csv', csv($('forces').querySelector('table'))));
  }

  /**
   * Asks for the closing in view; a newer request of this page calls an older one off.
   * @param {boolean} whole with all its moments
   * @param {boolean} refit fit the view to it
   * @returns {Promise<void>}
   */
  async compute(whole, refit) {
    if (!this.page.project || this.page.project.faults) return;
    const p = this.page.place;
    const mine = ++this.number;
    const started = performance.now();
    const query = {object: p.object, grip: p.grip, x: p.x.toFixed(4), y: p.y.toFixed(4), turn: p.turn.toFixed(4), ...(p.more ?? {}), page: this.name, number: mine};
    this.refit ||= refit;
    clearTimeout(this.sureTimer);
    $('stage').classList.add('busy');
    try {
      const closing = await get('/api/close', {...query, frames: whole ? 1 : 0});
      if (!closing || mine !== this.number) return; // a newer request won
      this.show(closing, this.refit && whole);
      if (whole) this.refit = false;
      this.times.push(Math.round(performance.now() - started));
      document.documentElement.dataset.times = this.times.slice(-100).join(' ');
      const files = new URLSearchParams(/** @type {any} */ (query));
      $('close-svg').href = '/api/close.svg?' + files;
      $('close-json').href = '/api/close.json?' + files;
      $('place-fault').replaceChildren();
      if (whole) this.sureTimer = setTimeout(() => this.sure(query), SURE_REST);
    } catch (e) {
      if (!(e instanceof Refused || e instanceof TypeError && e.message.includes('fetch'))) throw e;
      if (mine === this.number && e instanceof Refused) $('place-fault').replaceChildren(fault('not closed', e.message));
    } finally {
      if (mine === this.number) $('stage').classList.remove('busy');
    }
  }

  /**
   * How sure the answer is, by an ensemble over the stated uncertainties.
   * @param {Object<string, any>} query of the closing
   * @returns {Promise<void>}
   */
  async sure(query) {
    const s = await get('/api/sure', query).catch(() => null);
    if (!s || query.number !== this.number) return;
    const box = $('sure');
    box.classList.remove('stale');
    if (s.clear) {
      const held = s.held > 0 ? 'are held' : 'fail';
      box.replaceChildren(el('b', {}, 'Clear-cut: '), `all ${s.decided} runs with friction, mass, pads and springs as uncertain as stated ${held}.`);
    } else {
      const flips = s.flips.length
        ? 'One thing alone that turns it: ' + s.flips.map(f => `${f[0]} ${f[1]} (${f[2]})`).join(', ') + '.'
        : 'No single one of them turns it by one deviation.';
      box.replaceChildren(el('b', {}, 'Not clear-cut: '), `held in ${s.held} of ${s.decided} runs with friction, mass, pads and springs as uncertain as stated `
        + `(95\u00a0% interval ${num(100 * s.low, 0)} to ${num(100 * s.high, 0)}\u00a0%)${s.undecided ? ', ' + s.undecided + ' more undecided' : ''}. ${flips}`);
    }
    box.title = s.rule;
    box.dataset.sure = s.clear ? 'clear' : 'mixed';
  }

  /**
   * @param {Closing} closing
   * @param {boolean} refit
   */
  show(closing, refit) {
    this.page.closing = closing;
    closing.step = closing.complete ? classWidth(closing) : Math.max(this.step ?? 0, classWidth(closing));
    this.step = closing.step;
    this.verdict(closing);
    this.stage?.setClosing(closing, refit);
    const last = closing.frames.length - 1;
    if (closing.complete) {
      $('scrub').disabled = $('play').disabled = false;
      this.plots.show(closing, this.page.project);
      this.bar = places(closing);
      this.align();
      this.ticks(closing);
      this.forces(closing);
    } else {
      $('scrub').disabled = $('play').disabled = true;
    }
    this.showFrame(last);
  }

  /**
   * Puts a moment in view, everywhere.
   * @param {number} index
   * @param {boolean} [fromPlots] they have the cursor already
   */
  showFrame(index, fromPlots = false) {
    const c = this.page.closing;
    const f = c?.frames[index];
    if (!c || !f || !this.page.project) return;
    this.index = index;
    this.stage?.show(index);
    drawPads($('pads'), c, index, this.page.project.bodies);
    if (c.complete) $('scrub').value = this.bar[index];
    $('scrub').setAttribute('aria-valuetext', `${num(f.t)} newtons, ${PHASES[f.p]}`);
    $('tension').textContent = `${num(f.t)}\u00a0N, ${PHASES[f.p]}`;
    if (!fromPlots && c.complete) this.plots.cursor(index);
  }

  /** @param {Closing} c */
  verdict(c) {
    const first = c.firstTouches.filter(t => t[2] === 1);
    const words = first.length ? ` First touch: ${first[0][0]} at ${num(first[0][1])}\u00a0N.` : '';
    $('verdict').replaceChildren(mark(c.outcome, 18), ' ', el('b', {id: 'outcome', 'data-outcome': c.outcome}, c.words[0].toUpperCase() + c.words.slice(1) + '.'), ' ', c.reason + words);
    $('a3').replaceChildren(mark(c.outcome, 13), ` ${c.object}, ${c.grip}: ${c.words}`);
    $('sure').classList.add('stale');
    $('cautions').replaceChildren(...(c.outcome === 'undecided'
      ? [fault('undecided', 'The calculation did not converge here. It counts as undecided, never as held. Move the object a little, or try: gripwright close ' + (this.page.project?.folder ?? 'DIR') + ` --object "${c.object}" --grip "${c.grip}" --refine`)]
      : []), ...c.cautions.map(text => el('p', {class: 'small'}, text)));
  }

  /**
   * Puts the bar over the graphs, tension over tension.
   * @param {number} [tries] frames to wait for the plots to be laid out
   */
  align(tries = 30) {
    const span = this.plots.span();
    const box = $('scrub').parentElement;
    if (!span) return;
    const wide = span[1] - span[0];
    if (wide <= 0) {
      // the plots are not laid out yet
      if (tries > 0) requestAnimationFrame(() => this.align(tries - 1));
      return;
    }
    box.style.marginLeft = span[0] - SIDE * wide - THUMB / 2 + 'px';
    box.style.width = wide * (1 + 2 * SIDE) + THUMB + 'px';
  }

  /**
   * The moment nearest to a place on the bar.
   * @param {number} at
   * @returns {number}
   */
  nearest(at) {
    let best = 0;
    this.bar.forEach((p, i) => { if (Math.abs(p - at) < Math.abs(this.bar[best] - at)) best = i; });
    return best;
  }

  /**
   * Arrow keys go from moment to moment.
   * @param {KeyboardEvent} e
   */
  scrubKeys(e) {
    /** @type {Object<string, number>} */
    const to = {ArrowLeft: this.index - 1, ArrowDown: this.index - 1, ArrowRight: this.index + 1, ArrowUp: this.index + 1,
      PageDown: this.index - 10, PageUp: this.index + 10, Home: 0, End: this.bar.length - 1};
    if (to[e.key] === undefined || this.bar.length === 0) return;
    e.preventDefault();
    this.showFrame(Math.max(0, Math.min(this.bar.length - 1, to[e.key])));
  }

  /**
   * First touches under the scrub bar.
   * @param {Closing} c
   */
  ticks(c) {
    const box = $('touches');
    box.replaceChildren();
    /** Ends of each line of names, in percent of the bar. @type {number[]} */
    const ends = [];
    for (const [name, tension, phase] of c.firstTouches) {
      const i = c.frames.findIndex(f => f.p === phase && f.t >= tension - 1e-3);
      const at = 100 * ((this.bar[Math.max(0, i)] ?? 0) + SIDE) / (1 + 2 * SIDE);
      let level = ends.findIndex(end => at >= end);
      if (level < 0) level = ends.length;
      ends[level] = at + 8;
      const tick = el('span', {}, name);
      tick.style.left = at + '%';
      tick.style.top = 27 + 14 * level + 'px';
      box.append(tick);
    }
    box.parentElement.style.paddingBottom = 8 + 14 * Math.max(2, ends.length) + 'px';
  }

  /**
   * Forces on the object at the end, body by body, and how much of the friction they use.
   * @param {Closing} c
   */
  forces(c) {
    const rows = [...gathered(c)].filter(([, g]) => g.normal > 0.005).map(([name, g]) => el('tr', {}, el('th', {scope: 'row'}, name),
      el('td', {class: 'num'}, num(g.normal, 2)), el('td', {class: 'num'}, num(g.sideways, 2)), el('td', {class: 'num'}, num(g.friction, 2)),
      el('td', {class: 'num'}, g.friction > 0 ? percent(g.used) : '\u2013')));
    $('forces').replaceChildren(rows.length
      ? scrolled('Forces on the object at the end', el('table', {}, el('caption', {}, 'Forces on the object at the end'),
        el('thead', {}, el('tr', {}, ...['by', 'pressing, N', 'along the surface, N', 'friction', 'of it in use'].map((h, i) => el('th', {scope: 'col', class: i ? 'num' : ''}, h)))), el('tbody', {}, ...rows)))
      : el('p', {class: 'small'}, 'Nothing touches the object at the end.'));
    $('forces-csv').hidden = rows.length === 0;
  }

  /** Draws how far friction lets each force lean, or no longer. */
  cones() {
    const on = $('cones').getAttribute('aria-pressed') !== 'true';
    $('cones').setAttribute('aria-pressed', String(on));
    if (this.stage) {
      this.stage.cones = on;
      this.showFrame((this.page.closing?.frames.length ?? 1) - 1);
    }
  }

  /** Plays the closing, or shows its end where motion is not wanted. */
  play() {
    cancelAnimationFrame(this.playing);
    const c = this.page.closing;
    if (!c?.complete) return;
    const n = c.frames.length;
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.showFrame(n - 1);
      return;
    }
    const start = performance.now();
    const step = now => {
      if (this.page.closing !== c) return;
      const i = Math.min(n - 1, Math.floor((now - start) / 1000 / SHOWN_SECONDS * n));
      this.showFrame(i);
      if (i < n - 1) this.playing = requestAnimationFrame(step);
    };
    this.playing = requestAnimationFrame(step);
  }
}
