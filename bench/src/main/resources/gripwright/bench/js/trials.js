// Question 5: virtual trials with progress; a failure can be watched.
import {get, post} from './api.js';
import {$, el, fault, mark, num, percent, svg} from './dom.js';

/** @typedef {import('./types.js').Page} Page */

/** The table of trials and its controls. */
export class TrialsView {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    /** @type {any} */
    this.table = null;
    /** @type {any} */
    this.last = null;
    this.started = 0;
    for (const a of document.querySelectorAll('#q5 .acts a[download], #q5 .files a[download]')) a.addEventListener('click', e => this.download(e));
    $('trials-go').addEventListener('click', () => this.start());
    $('trials-stop').addEventListener('click', () => post('/api/stop').catch(e => this.wrong(e)));
  }

  /** @param {Error} e */
  wrong(e) {
    $('trials-fault').replaceChildren(fault('not computed', e.message));
  }

  /**
   * Without trials there is nothing to download.
   * @param {Event} e
   */
  download(e) {
    if (!this.table) {
      e.preventDefault();
      this.wrong(new Error('there are no trials yet; start some first'));
    }
  }

  /**
   * Starts the trials, or goes on with stopped ones.
   * @returns {Promise<void>}
   */
  async start() {
    $('trials-fault').replaceChildren();
    try {
      await post('/api/trials', {runs: $('runs').value, seed: $('seed').value});
    } catch (e) {
      this.wrong(e);
    }
  }

  /** The server is another: what was under way is asked for again; it goes on where it was. */
  resume() {
    if (this.last?.state === 'running') post('/api/trials', {runs: this.last.runs, seed: this.last.seed}).catch(e => this.wrong(e));
  }

  /**
   * News of the trials under way.
   * @param {any} t
   * @returns {Promise<void>}
   */
  async news(t) {
    const running = t.state === 'running';
    if (running && this.last?.state !== 'running') this.started = performance.now() - 1;
    this.last = t;
    $('trials-stop').disabled = !running;
    $('trials-go').textContent = t.state === 'stopped' ? 'Go on' : 'Try';
    $('trials-prog').hidden = !running;
    $('trials-prog').querySelector('i').style.width = 100 * t.done / Math.max(1, t.of) + '%';
    $('trials-prog').querySelector('span').textContent = `${t.done} of ${t.of} closings${this.left(t)}`;
    if (t.state.startsWith('failed')) this.wrong(new Error(t.state.slice(8)));
    if (running) {
      $('a5').classList.add('stale');
      $('a5').textContent = `${Math.floor(100 * t.done / Math.max(1, t.of))} % tried`;
    }
    if (t.result && !running) {
      this.table = await get('/api/trials').catch(() => null);
      if (this.table) this.draw(t.revision !== this.page.project?.revision);
    }
  }

  /**
   * How long it will take, after a while.
   * @param {any} t
   * @returns {string}
   */
  left(t) {
    const seconds = (performance.now() - this.started) / 1000;
    return seconds < 3 || t.done < 20 ? '' : `, about ${Math.ceil(seconds / t.done * (t.of - t.done))}\u00a0s left`;
  }

  /** The files changed since. */
  old() {
    if (this.table) {
      $('a5').classList.add('stale');
      if (!$('trials-old')) $('trials').prepend(el('p', {class: 'small moved', id: 'trials-old'}, 'Δ The files were changed since these trials.'));
    }
  }

  /**
   * Draws the table.
   * @param {boolean} stale the files were changed since
   */
  draw(stale) {
    const t = this.table;
    $('trials-say').replaceChildren(...t.sentences.slice(0, 3).flatMap((s, i) => (i ? [' ', s] : [el('b', {}, s)])));
    $('a5').classList.remove('stale');
    $('a5').textContent = percent(t.share) + ', weighted';
    const grips = [...new Set(t.pairs.map(p => p.grip))];
    const objects = [...new Set(t.pairs.map(p => p.object))];
    const body = el('tbody');
    for (const object of objects) {
      const row = el('tr', {}, el('th', {scope: 'row'}, object));
      for (const grip of grips) {
        const p = t.pairs.find(q => q.object === object && q.grip === grip);
        row.append(p ? this.cell(p, t.wanted) : el('td', {class: 'none'}, 'not tried'));
      }
      const best = t.pairs.find(q => q.object === object && q.best);
      row.append(el('td', {}, el('b', {}, best?.grip ?? '\u2013'), el('div', {class: 'small'}, !best || !best.decided ? '' : best.low >= t.wanted ? 'reaches it' : best.high < t.wanted ? 'below it' : 'may reach it')));
      body.append(row);
    }
    $('trials').replaceChildren(el('div', {class: 'tscroll', tabindex: '0', role: 'region', 'aria-label': 'Trials by object and grip'}, el('table', {class: 'trials'},
      el('caption', {}, `${t.runs} runs for each pair, seed ${t.seed}${t.stopped ? ', stopped before the end' : ''}. Broken line: the wanted ${percent(t.wanted)}; the last column says whether the best grip reaches it. Whisker: 95 % interval.`),
      el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, 'object'), ...grips.map(g => el('th', {scope: 'col'}, g)), el('th', {scope: 'col'}, 'best grip'))), body,
      el('tfoot', {}, el('tr', {}, el('th', {scope: 'row'}, 'all, weighted'), el('td', {colspan: String(grips.length + 1)}, Number.isFinite(t.share) ? `${percent(t.share)} (${num(100 * t.low, 0)} to ${num(100 * t.high, 0)} %) with each object's chosen grip` : 'too few runs'))))));
    const failures = new Map();
    t.pairs.forEach(p => p.outcomes.forEach(o => failures.set(o.outcome, {words: o.words, count: (failures.get(o.outcome)?.count ?? 0) + o.count})));
    if (failures.size) {
      $('trials').append(el('h3', {}, 'Why they fail, over all grips'), el('ul', {class: 'whylist'}, ...[...failures].sort((a, b) => b[1].count - a[1].count)
        .map(([key, f]) => el('li', {}, mark(key, 16), el('span', {}, f.words), el('b', {}, String(f.count))))));
    }
    if (stale) this.old();
  }

  /**
   * @param {any} p object and grip
   * @param {number} wanted share
   * @returns {Element}
   */
  cell(p, wanted) {
    const bar = svg('svg', {class: 'bar', width: 66, height: 14, viewBox: '0 0 66 14', 'aria-hidden': 'true'});
    if (p.decided > 0) {
      bar.append(svg('rect', {class: 'bt', x: 0, y: 2, width: 66, height: 10}),
        svg('rect', {class: 'bf' + (p.best ? ' best' : ''), x: 0, y: 2, width: 66 * p.share, height: 10}),
        svg('path', {class: 'aim', d: `M${66 * wanted} 0V14`}),
        svg('path', {class: 'whh', d: `M${66 * p.low} 7H${66 * p.high}`}), svg('path', {class: 'wh', d: `M${66 * p.low} 7H${66 * p.high}`}));
    }
    const why = p.outcomes.map(o => {
      const label = [mark(o.outcome, 13), `${o.words} ${o.count}`];
      if (!o.example) return el('span', {}, ...label);
      return el('button', {class: 'why', title: 'watch one of them', onclick: () => this.watch(p, o)}, ...label);
    });
    const worst = [...p.outcomes].filter(o => o.example).sort((a, b) => b.count - a.count)[0];
    const shown = worst ? el('button', {class: 'barb', 'aria-label': `watch how ${p.object} fails with ${p.grip}`, title: 'watch its most frequent failure', onclick: () => this.watch(p, worst)}, bar) : bar;
    return el('td', {class: p.best ? 'best' : ''}, el('div', {class: 'bc'}, shown, el('span', {class: 'pc'}, p.decided ? percent(p.share) : '–')),
      el('div', {class: 'bn2'}, p.decided ? `${num(100 * p.low, 0)} to ${num(100 * p.high, 0)} %` : '', ...why));
  }

  /**
   * Puts one failure in the view.
   * @param {any} p object and grip
   * @param {any} o outcome with its example
   * @returns {Promise<void>}
   */
  async watch(p, o) {
    const {x, y, turn, ...more} = o.example;
    await this.page.go({object: p.object, grip: p.grip, x, y, turn, more});
    $('q3').scrollIntoView();
    this.page.play();
  }
}
