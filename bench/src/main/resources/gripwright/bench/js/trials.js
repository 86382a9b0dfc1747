// Question 5: virtual trials with progress; a failure can be watched.
import {get, post} from './api.js';
import {$, el, fault, mark, num, percent, svg} from './dom.js';

export class TrialsView {
  constructor(page) {
    this.page = page;
    $('trials-go').addEventListener('click', () => this.start());
    $('trials-stop').addEventListener('click', () => post('/api/stop').catch(e => this.wrong(e)));
    $('trials-csv').addEventListener('click', () => this.csv());
  }

  wrong(e) {
    $('trials-fault').replaceChildren(fault('not computed', e.message));
  }

  async start() {
    $('trials-fault').replaceChildren();
    try {
      await post('/api/trials', {runs: $('runs').value, seed: $('seed').value});
    } catch (e) {
      this.wrong(e);
    }
  }

  async news(t) {
    const running = t.state === 'running';
    $('trials-stop').disabled = !running;
    $('trials-go').textContent = t.state === 'stopped' ? 'Go on' : 'Try';
    $('trials-prog').hidden = !running;
    $('trials-prog').querySelector('i').style.width = 100 * t.done / Math.max(1, t.of) + '%';
    $('trials-prog').querySelector('span').textContent = `${t.done} of ${t.of} closings`;
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

  /** The files changed since. */
  old() {
    if (this.table) {
      $('a5').classList.add('stale');
      if (!$('trials-old')) $('trials').prepend(el('p', {class: 'small moved', id: 'trials-old'}, 'Δ The files were changed since these trials.'));
    }
  }

  draw(stale) {
    const t = this.table;
    $('trials-say').replaceChildren(...t.sentences.slice(0, 4).flatMap((s, i) => (i ? [' ', s] : [el('b', {}, s)])));
    $('a5').classList.remove('stale');
    $('a5').textContent = percent(t.share) + ', weighted';
    const grips = [...new Set(t.pairs.map(p => p.grip))];
    const objects = [...new Set(t.pairs.map(p => p.object))];
    const body = el('tbody');
    for (const object of objects) {
      const row = el('tr', {}, el('th', {scope: 'row'}, object));
      for (const grip of grips) {
        const p = t.pairs.find(q => q.object === object && q.grip === grip);
        row.append(p ? this.cell(p, t.wanted) : el('td', {class: 'none'}, '–'));
      }
      body.append(row);
    }
    $('trials').replaceChildren(el('div', {class: 'tscroll', tabindex: '0', role: 'region', 'aria-label': 'Trials by object and grip'}, el('table', {class: 'trials'},
      el('caption', {}, `${t.runs} runs for each pair, seed ${t.seed}${t.stopped ? ', stopped before the end' : ''}. Broken line: the wanted ${percent(t.wanted)}. Whisker: 95 % interval.`),
      el('thead', {}, el('tr', {}, el('th', {scope: 'col'}, 'object'), ...grips.map(g => el('th', {scope: 'col'}, g)))), body,
      el('tfoot', {}, el('tr', {}, el('th', {scope: 'row'}, 'all, weighted'), el('td', {colspan: String(grips.length)}, Number.isFinite(t.share) ? `${percent(t.share)} (${num(100 * t.low, 0)} to ${num(100 * t.high, 0)} %) with each object's chosen grip` : 'too few runs'))))));
    if (stale) this.old();
  }

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
    return el('td', {class: p.best ? 'best' : ''}, el('div', {class: 'bc'}, bar, el('span', {class: 'pc'}, p.decided ? percent(p.share) : '–')),
      el('div', {class: 'bn2'}, p.decided ? `${num(100 * p.low, 0)} to ${num(100 * p.high, 0)} %` : '', ...why));
  }

  async watch(p, o) {
    const {x, y, turn, ...more} = o.example;
    await this.page.go({object: p.object, grip: p.grip, x, y, turn, more});
    $('q3').scrollIntoView();
  }

  csv() {
    if (!this.table) {
      this.wrong(new Error('there are no trials yet; start some first'));
      return;
    }
    const quote = s => (/[",\n]/.test(s) ? '"' + String(s).replaceAll('"', '""') + '"' : String(s));
    const lines = [['object', 'grip', 'held', 'decided', 'undecided', 'share', 'low', 'high', 'best']];
    for (const p of this.table.pairs) lines.push([p.object, p.grip, p.held, p.decided, p.undecided, p.share ?? '', p.low ?? '', p.high ?? '', p.best ? 1 : 0]);
    const blob = new Blob([lines.map(l => l.map(quote).join(',')).join('\r\n') + '\r\n'], {type: 'text/csv'});
    const a = el('a', {href: URL.createObjectURL(blob), download: 'trials.csv'});
    a.click();
    URL.revokeObjectURL(a.href);
  }
}
