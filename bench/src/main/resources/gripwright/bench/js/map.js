// Question 4: the capture map fills in from coarse to fine while one watches.
import {post, text} from './api.js';
import {$, el, fault, mark, num, svg} from './dom.js';

// The field in the server's picture, in its units.
const LEFT = 46, TOP = 8, FIELD = 492;

export class MapView {
  /** @param {any} page */
  constructor(page) {
    this.page = page;
    this.last = null;
    this.heldBefore = null;
    this.areaBefore = null;
    $('map-go').addEventListener('click', () => this.start());
    $('map-stop').addEventListener('click', () => post('/api/stop').catch(e => this.wrong(e)));
    $('map').addEventListener('click', e => this.pick(e));
  }

  wrong(e) {
    $('map-fault').replaceChildren(fault('not computed', e.message));
  }

  async start() {
    $('map-fault').replaceChildren();
    const {object, grip} = this.page.place;
    try {
      await post('/api/map', {object, grip, span: $('span').value.replace(',', '.'), cells: $('cells').value});
    } catch (e) {
      this.wrong(e);
    }
  }

  /** After a change of the files: the same map again, with the old one kept as a thin outline. */
  again() {
    if (!this.last || !this.last.complete || this.last.revision === this.page.project.revision) return;
    this.heldBefore = $('map').querySelector('.held1')?.getAttribute('d') ?? null;
    this.areaBefore = {area: this.last.areaCm2, cells: this.last.complete, object: this.last.object, grip: this.last.grip};
    $('a4').classList.add('stale');
    post('/api/map', {object: this.last.object, grip: this.last.grip, span: this.last.spanMm, cells: this.last.finest}).catch(e => this.wrong(e));
  }

  /** News of the running map. */
  async news(m) {
    if (this.last && (this.last.object !== m.object || this.last.grip !== m.grip || this.last.spanMm !== m.spanMm)) {
      this.heldBefore = null;
      this.areaBefore = null;
    }
    const running = m.state === 'running';
    this.last = m;
    $('map-stop').disabled = !running;
    $('map-go').textContent = m.state === 'stopped' ? 'Go on' : m.complete ? 'Draw it again' : 'Draw the map';
    $('map-prog').hidden = !running;
    $('map-prog').querySelector('i').style.width = 100 * m.done / Math.max(1, m.of) + '%';
    $('map-prog').querySelector('span').textContent = `${m.cells} × ${m.cells}: ${m.done} of ${m.of} placements`;
    if (m.state.startsWith('failed')) this.wrong(new Error(m.state.slice(8)));
    if (m.picture && m.complete) await this.draw(m);
    else this.fresh(m);
  }

  sentence(m) {
    // Promised, so rounded down, as everywhere.
    const range = num(m.captureMm < 10 ? Math.floor(m.captureMm * 10 + 1e-9) / 10 : Math.floor(m.captureMm + 1e-9)) + '\u00a0mm';
    const say = $('map-say');
    say.replaceChildren(`The ${m.object} with the grip ${m.grip}: `, m.captureMm > 0
      ? el('span', {}, 'every computed placement within ', el('b', {}, (m.limited ? 'at least ' : '') + range), ' of the nominal place is held. ')
      : el('span', {}, 'not held even at its nominal place. '), `Held area ${num(m.areaCm2)}\u00a0cm².`);
    $('a4').classList.remove('stale');
    $('a4').replaceChildren(`${m.object}: ${m.captureMm > 0 ? range : 'none'}`);
    const b = this.areaBefore;
    if (b && b.cells === m.complete && b.object === m.object && b.grip === m.grip) {
      const d = m.areaCm2 - b.area;
      const words = `Δ ${d >= 0 ? '+' : ''}${num(d)}\u00a0cm²`;
      say.append(' ', el('span', {class: 'moved', id: 'map-delta'}, words));
      $('a4').append(' ', el('span', {class: 'ch'}, words));
    }
  }

  async draw(m) {
    const drawing = await text('/api/map.svg').catch(() => null);
    if (!drawing || this.last !== m && this.last.complete !== m.complete) return;
    $('map').innerHTML = drawing;
    const picture = $('map').querySelector('svg');
    if (this.heldBefore) {
      picture.append(svg('path', {class: 'prevh', d: this.heldBefore}), svg('path', {class: 'prev', d: this.heldBefore}));
    }
    this.layer = svg('g', {class: 'cells'});
    picture.append(this.layer);
    picture.append(svg('rect', {class: 'click', x: LEFT, y: TOP, width: FIELD, height: FIELD, id: 'map-field'}));
    this.chosen();
    this.sentence(m);
  }

  /** Cells that are new since the picture was drawn, laid over it. */
  fresh(m) {
    if (!this.layer || !m.fresh) return;
    const size = FIELD / m.cells;
    for (const cell of m.fresh.split(';')) {
      const [row, column, key] = cell.split(',');
      this.layer.append(svg('rect', {class: 'g-' + key, x: LEFT + column * size, y: TOP + FIELD - (Number(row) + 1) * size, width: size, height: size}));
    }
  }

  /** The cell of the closing in view, framed. */
  chosen() {
    const picture = $('map').querySelector('svg');
    if (!picture || !this.last?.complete) return;
    picture.querySelectorAll('.chosen,.chosenh').forEach(n => n.remove());
    const m = this.last;
    const p = this.page.place;
    if (p.object !== m.object || p.grip !== m.grip) return;
    const cell = FIELD / m.complete;
    const pitch = 2 * m.spanMm / (m.complete - 1);
    const x = LEFT + (Math.round((p.x + m.spanMm) / pitch)) * cell;
    const y = TOP + FIELD - (Math.round((p.y + m.spanMm) / pitch) + 1) * cell;
    if (x < LEFT - 1 || x > LEFT + FIELD || y < TOP - 1 || y > TOP + FIELD) return;
    const rect = cls => svg('rect', {class: cls, x, y, width: cell, height: cell});
    picture.insertBefore(rect('chosenh'), $('map-field'));
    picture.insertBefore(rect('chosen'), $('map-field'));
  }

  async pick(e) {
    if (e.target.id !== 'map-field' || !this.last) return;
    const box = e.target.getBoundingClientRect();
    const m = this.last;
    const n = m.complete;
    const column = Math.min(n - 1, Math.floor((e.clientX - box.left) / box.width * n));
    const row = n - 1 - Math.min(n - 1, Math.floor((e.clientY - box.top) / box.height * n));
    const shift = k => Number((2 * m.spanMm * (k - (n >> 1)) / (n - 1)).toFixed(4));
    await this.page.go({object: m.object, grip: m.grip, x: shift(column), y: shift(row), turn: 0, more: null});
    const c = this.page.closing;
    if (c) {
      $('map-tip').replaceChildren(el('div', {class: 'tip'}, mark(c.outcome, 26), el('div', {},
        el('b', {}, `x ${num(c.conditions.x)}, y ${num(c.conditions.y)}\u00a0mm: ${c.words}. `), c.reason + ' ', el('a', {href: '#q3', class: 'lnk', 'data-goto': '3'}, 'See it close'))));
    }
  }
}
