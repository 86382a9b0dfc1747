// Question 4: the capture map fills in from coarse to fine while one watches.
import {post, text} from './api.js';
import {$, el, fault, mark, num, svg} from './dom.js';

/** @typedef {import('./types.js').MapNews} MapNews */
/** @typedef {import('./types.js').Page} Page */

// The field in the server's picture, in its units.
const LEFT = 46, TOP = 8, FIELD = 492;

/**
 * A range that is promised, so rounded down, as everywhere.
 * @param {number} mm
 * @returns {string}
 */
const promised = mm => num(mm < 10 ? Math.floor(mm * 10 + 1e-9) / 10 : Math.floor(mm + 1e-9)) + '\u00a0mm';

/** The map's picture, its sentence and its controls. */
export class MapView {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    /** @type {MapNews|null} */
    this.last = null;
    /** Outline of what was held before the last change of the files. @type {string|null} */
    this.heldBefore = null;
    /** @type {MapNews|null} */
    this.before = null;
    $('map-go').addEventListener('click', () => this.start());
    $('map-stop').addEventListener('click', () => post('/api/stop').catch(e => this.wrong(e)));
    $('map').addEventListener('click', e => this.pick(e));
    $('map').addEventListener('pointermove', e => this.point(e));
    $('map').addEventListener('keydown', e => this.keys(e));
  }

  /** @param {Error} e */
  wrong(e) {
    $('map-fault').replaceChildren(fault('not computed', e.message));
  }

  /**
   * Asks for the map of the object and grip in view, or for the rest of a stopped one.
   * @returns {Promise<void>}
   */
  async start() {
    $('map-fault').replaceChildren();
    const {object, grip} = this.page.place;
    await this.ask({object, grip, span: $('span').value.replace(',', '.'), cells: $('cells').value});
  }

  /**
   * @param {Object<string, any>} what
   * @returns {Promise<void>}
   */
  async ask(what) {
    try {
      await post('/api/map', what);
    } catch (e) {
      this.wrong(e);
    }
  }

  /**
   * The same map once more: after a change of the files, or when the server is another.
   * @returns {Promise<void>}
   */
  async same() {
    const m = this.last;
    if (m) await this.ask({object: m.object, grip: m.grip, span: m.spanMm, cells: m.cells});
  }

  /** After a change of the files: the map again, with the old one kept as a thin outline. */
  again() {
    const m = this.last;
    if (!m || !m.complete || m.revision === this.page.project?.revision) return;
    this.heldBefore = $('map').querySelector('.held1')?.getAttribute('d') ?? null;
    this.before = m;
    $('a4').classList.add('stale');
    this.same();
  }

  /** The server that made this map is gone: what was under way is asked for again; it goes on where it was. */
  resume() {
    if (this.last?.state === 'running') this.same();
  }

  /** Nothing is said yet of a map that only begins. */
  empty() {
    $('map-more').replaceChildren();
    $('map-undecided').replaceChildren();
  }

  /** What the button would do now. */
  button() {
    const m = this.last;
    const p = this.page.place;
    const mine = m && m.object === p.object && m.grip === p.grip && m.revision === this.page.project?.revision;
    $('map-go').textContent = (mine && m.state === 'stopped' ? 'Go on with the map of ' : mine && m.complete ? 'Draw again the map of ' : 'Draw the map of ') + `${p.object}, ${p.grip}`;
    $('map-go').disabled = Boolean(mine && m.state === 'running');
  }

  /**
   * News of the map under way.
   * @param {MapNews} m
   * @returns {Promise<void>}
   */
  async news(m) {
    if (this.last && (this.last.object !== m.object || this.last.grip !== m.grip || this.last.spanMm !== m.spanMm)) {
      this.heldBefore = null;
      this.before = null;
    }
    const first = !this.last || this.last.revision !== m.revision || this.last.object !== m.object || this.last.grip !== m.grip || this.last.state !== 'running' && m.state === 'running';
    const running = m.state === 'running';
    this.last = m;
    $('map-stop').disabled = !running;
    this.button();
    if (first) this.empty();
    $('map-prog').classList.toggle('idle', !running);
    const share = 100 * m.done / Math.max(1, m.of);
    $('map-prog').querySelector('i').style.width = (running ? share : m.complete === m.cells ? 100 : share) + '%';
    const grid = Math.floor((m.cells - 1) / Math.max(1, m.stride)) + 1;
    const what = m.sharing ? 'how sure the cells along the border are' : `${grid} by ${grid}`;
    $('map-prog').querySelector('span').textContent = running ? `${what}: ${m.done} of ${m.of} cells` : m.state === 'done' ? `done in ${num(m.seconds)}\u00a0s` : m.state === 'stopped' ? 'stopped' : '';
    $('map-fault').replaceChildren(...(m.state.startsWith('failed') ? [fault('not computed', m.state.slice(8))] : []), ...(m.trouble ? [fault('not kept', m.trouble)] : []));
    if (running) $('a4').classList.add('stale');
    if (m.picture && m.complete || first) await this.draw(m);
    this.fresh(m);
    document.documentElement.dataset.map = `${m.state} ${m.complete} ${m.shares}`;
  }

  /** @param {MapNews} m */
  sentence(m) {
    if (!m.complete) return;
    const mm = m.captureMm ?? 0;
    const range = promised(mm);
    const grid = m.complete < m.cells ? ` So far on a coarse grid of ${m.complete} by ${m.complete}.` : !m.shares && m.state === 'running' ? ' One run in each cell so far.' : '';
    $('map-say').replaceChildren(`The ${m.object} with the grip ${m.grip}: `, mm > 0
      ? el('span', {}, 'every computed placement within ', el('b', {}, (m.limited ? 'at least ' : '') + range), ' of the nominal place is held. ')
      : el('span', {}, 'not held even at its nominal place. '), `Held area ${num(m.areaCm2 ?? 0)}\u00a0cm².${grid}`);
    $('a4').classList.toggle('stale', m.state === 'running');
    $('a4').replaceChildren(`${m.object}: ${mm > 0 ? (m.limited ? 'at least ' : '') + range : 'none'}`);
    const b = this.before;
    if (b && b.complete === m.complete && b.shares === m.shares && m.state !== 'running' && b.object === m.object && b.grip === m.grip) {
      const d = (m.areaCm2 ?? 0) - (b.areaCm2 ?? 0);
      const words = `\u0394 ${d >= 0 ? '+' : ''}${num(d)}\u00a0cm²`;
      $('map-say').append(' ', el('span', {class: 'moved', id: 'map-delta'}, `${words} by the last change; before it ${num(b.areaCm2 ?? 0)}\u00a0cm² and ${promised(b.captureMm ?? 0)}.`));
      $('a4').append(' ', el('span', {class: 'ch'}, words));
    }
    $('map-more').replaceChildren(...m.sentences.flatMap((t, i) => [i ? ' ' : '', t.replaceAll('cm2', 'cm\u00b2')]));
    $('map-undecided').replaceChildren(...(m.undecided.length ? [this.undecided(m)] : []));
  }

  /**
   * @param {MapNews} m
   * @returns {Element}
   */
  undecided(m) {
    const box = fault('undecided', 'The calculation did not converge in some cells. They are counted as undecided, never as held. Look at one: ');
    m.undecided.forEach(([x, y], i) => box.append(i ? ', ' : '', el('button', {class: 'lnk', onclick: async () => {
      await this.page.go({object: m.object, grip: m.grip, x, y, turn: 0, more: null});
      $('q3').scrollIntoView();
    }}, `x\u00a0${num(x)}, y\u00a0${num(y)}\u00a0mm`)));
    return box;
  }

  /**
   * Fetches the picture as far as the map has come.
   * @param {MapNews} m
   * @returns {Promise<void>}
   */
  async draw(m) {
    const drawing = await text('/api/map.svg').catch(() => null);
    if (!drawing || this.last !== m && (this.last?.complete !== m.complete || this.last?.revision !== m.revision)) return;
    $('map').innerHTML = drawing;
    const picture = $('map').querySelector('svg');
    picture.setAttribute('role', 'group'); // no plain picture: its cells can be chosen
    if (this.heldBefore) {
      picture.querySelectorAll('.held1').forEach(n => n.classList.add('now'));
      picture.append(svg('path', {class: 'prevh', d: this.heldBefore}), svg('path', {class: 'prev', d: this.heldBefore}));
    }
    this.layer = svg('g', {class: 'cells'});
    // Under the outlines, so that circle and scale stay in sight.
    const over = picture.querySelector('.cells');
    if (over) over.after(this.layer);
    else picture.append(this.layer);
    picture.append(svg('rect', {class: 'click', x: LEFT, y: TOP, width: FIELD, height: FIELD, id: 'map-field', tabindex: '0', role: 'button', 'aria-label': 'The map: choose a cell with the arrow keys; its closing comes into the view'}));
    this.chosen();
    this.sentence(m);
  }

  /**
   * Cells that are new since the picture was drawn, laid over it.
   * @param {MapNews} m
   */
  fresh(m) {
    if (!this.layer || !m.fresh) return;
    // The picture may still be of a coarser grid, which reaches a little farther out.
    const n = this.side();
    const perStep = FIELD / n * (n - 1) / (m.cells - 1);
    const middle = m.cells >> 1;
    for (const cell of m.fresh.split(';')) {
      const [row, column, key, eighths] = cell.split(',');
      // A share under a half keeps the ground of what happens in the nominal run.
      if (!key && Number(eighths) < 4) continue;
      const ground = key ? 'g-' + key : Number(eighths) < 8 ? 'share' + eighths : 'g-held';
      const apart = m.sharing ? 1 : this.apart(Number(row), Number(column));
      const wide = perStep * apart;
      const x = LEFT + FIELD / 2 + (Number(column) - middle) * perStep - wide / 2;
      const y = TOP + FIELD / 2 - (Number(row) - middle) * perStep - wide / 2;
      const left = Math.max(LEFT, x);
      const top = Math.max(TOP, y);
      this.layer.append(svg('rect', {class: ground, x: left, y: top, width: Math.min(LEFT + FIELD, x + wide) - left, height: Math.min(TOP + FIELD, y + wide) - top}));
    }
  }

  /**
   * How far from its neighbours of the present grid a cell lies; a cell of a coarser grid is no coarser now.
   * @param {number} row
   * @param {number} column
   * @returns {number} in cells
   */
  apart(row, column) {
    const m = this.last;
    if (!m) return 1;
    let apart = m.stride;
    const middle = m.cells >> 1;
    while (apart > 1 && ((row - middle) % apart !== 0 || (column - middle) % apart !== 0)) apart /= 2;
    return apart;
  }

  /** The cell of the closing in view, framed. */
  chosen() {
    this.button();
    const picture = $('map').querySelector('svg');
    const m = this.last;
    if (!picture || !m) return;
    picture.querySelectorAll('.chosen,.chosenh').forEach(n => n.remove());
    const p = this.page.place;
    if (p.object !== m.object || p.grip !== m.grip) return;
    const n = this.side();
    const cell = FIELD / n;
    const pitch = 2 * m.spanMm / (n - 1);
    const x = LEFT + (Math.round((p.x + m.spanMm) / pitch)) * cell;
    const y = TOP + FIELD - (Math.round((p.y + m.spanMm) / pitch) + 1) * cell;
    if (x < LEFT - 1 || x > LEFT + FIELD - 1 || y < TOP - 1 || y > TOP + FIELD - 1) return;
    const rect = cls => svg('rect', {class: cls, x, y, width: cell, height: cell});
    if (!$('map-field')) return;
    picture.insertBefore(rect('chosenh'), $('map-field'));
    picture.insertBefore(rect('chosen'), $('map-field'));
  }

  /**
   * Cells along a side of the picture: before the first grid is complete those of the finest.
   * @returns {number}
   */
  side() {
    return this.last?.complete || this.last?.cells || 1;
  }

  /**
   * The cell under the pointer, as row and column of the picture.
   * @param {MouseEvent} e
   * @returns {number[]|null}
   */
  cellOf(e) {
    const field = /** @type {Element} */ (e.target);
    const m = this.last;
    if (field.id !== 'map-field' || !m) return null;
    const box = field.getBoundingClientRect();
    const n = this.side();
    const within = v => Math.max(0, Math.min(n - 1, Math.floor(v * n)));
    return [n - 1 - within((e.clientY - box.top) / box.height), within((e.clientX - box.left) / box.width)];
  }

  /**
   * The shift that a row or column stands for [mm].
   * @param {number} k
   * @returns {number}
   */
  shift(k) {
    const m = this.last;
    const n = this.side();
    return m ? Number((2 * m.spanMm * (k - (n >> 1)) / (n - 1)).toFixed(4)) : 0;
  }

  /** @param {MouseEvent} e */
  point(e) {
    const at = this.cellOf(e);
    if (at) $('map-at').textContent = `x ${num(this.shift(at[1]))}, y ${num(this.shift(at[0]))}\u00a0mm`;
  }

  /**
   * A click puts a cell's closing in the view.
   * @param {MouseEvent} e
   * @returns {Promise<void>}
   */
  async pick(e) {
    const at = this.cellOf(e);
    if (at) await this.take(at[0], at[1]);
  }

  /**
   * Arrow keys on the map go from cell to cell.
   * @param {KeyboardEvent} e
   * @returns {Promise<void>}
   */
  async keys(e) {
    const m = this.last;
    /** @type {Object<string, number[]>} */
    const ways = {ArrowUp: [1, 0], ArrowDown: [-1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1]};
    const way = ways[e.key];
    if (!m || !way || /** @type {Element} */ (e.target).id !== 'map-field') return;
    e.preventDefault();
    const n = this.side();
    const pitch = 2 * m.spanMm / (n - 1);
    const index = (v, by) => Math.max(0, Math.min(n - 1, Math.round((v + m.spanMm) / pitch) + by));
    await this.take(index(this.page.place.y, way[0]), index(this.page.place.x, way[1]));
  }

  /**
   * @param {number} row
   * @param {number} column
   * @returns {Promise<void>}
   */
  async take(row, column) {
    const m = this.last;
    if (!m) return;
    await this.page.go({object: m.object, grip: m.grip, x: this.shift(column), y: this.shift(row), turn: 0, more: null});
    this.tip();
  }

  /** What happens in the chosen cell, as the hand is now. */
  tip() {
    const c = this.page.closing;
    const m = this.last;
    if (c && m && c.object === m.object && c.grip === m.grip) {
      $('map-tip').replaceChildren(el('div', {class: 'tip'}, mark(c.outcome, 26), el('div', {},
        el('b', {}, `x ${num(c.conditions.x)}, y ${num(c.conditions.y)}\u00a0mm: ${c.words}. `), c.reason + ' ', el('a', {href: '#q3', class: 'lnk', 'data-goto': '3'}, 'See it close'))));
    }
  }
}
