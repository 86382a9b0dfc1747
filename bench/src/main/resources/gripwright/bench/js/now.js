// Question 7: what the built pads say now. Asks the server while the section is in view, state after state: the next is
// asked for when the last is drawn, so a slow page skips states instead of falling behind.
import {Refused, get} from './api.js';
import {writeAddress} from './address.js';
import {$, csv, el, fault, num, offer, scrolled} from './dom.js';
import {NowCurves} from './nowcurves.js';
import {NowPads} from './nowpads.js';

/** @typedef {import('./types.js').Page} Page */
/** @typedef {import('./types.js').NowState} NowState */

const AGAIN = 1000;
const TABLE = 1000;
const RESTING = 30;
const STATES = {r: 'saturated now', w: 'was saturated', n: 'gives no number', s: 'does not change: stuck?'};

/**
 * A whole number with room between its thousands.
 * @param {number} value
 * @returns {string}
 */
const big = value => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, '\u202f');

/**
 * A duration as people say it.
 * @param {number} seconds
 * @returns {string}
 */
function lasting(seconds) {
  const s = Math.floor(seconds);
  if (s < 120) return `${s}\u00a0s`;
  return s < 7200 ? `${Math.floor(s / 60)}\u00a0min ${s % 60}\u00a0s` : `${Math.floor(s / 3600)}\u00a0h ${Math.floor(s / 60) % 60}\u00a0min`;
}

/**
 * A reading with as many digits as can be told apart.
 * @param {number|null} value
 * @returns {string}
 */
const reading = value => (value === null || value === undefined ? '\u2013' : Math.abs(value) >= 10000 ? (value < 0 ? '\u2212' : '') + big(Math.abs(value)) : num(value, Math.abs(value) >= 1000 ? 1 : 4));

/**
 * A time of the machine's clock.
 * @param {string|number} time
 * @returns {string}
 */
const clock = time => (Number.isNaN(new Date(time).getTime()) ? 'an unknown time' : new Date(time).toISOString().slice(0, 19).replace('T', ' ') + ' UTC');

/** The section of the readings. */
export class NowView {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    this.visible = false;
    this.held = false;
    this.ticket = 0;
    /** @type {NowState|null} */
    this.state = null;
    /** @type {any} */
    this.layout = null;
    /** Zeros that were taken here, by column; else those of the log's first second. @type {Map<string, number>|null} */
    this.zeros = null;
    this.tabled = 0;
    this.heard = '';
    this.shownLogs = '';
    this.pads = new NowPads($('now-pads'), column => this.choose(column));
    this.curves = new NowCurves($('now-curves'));
    new IntersectionObserver(entries => {
      this.visible = entries[entries.length - 1].isIntersecting;
      this.again();
    }).observe($('q7'));
    document.addEventListener('visibilitychange', () => this.again());
    $('now-log').addEventListener('change', () => {
      this.page.place.log = $('now-log').value;
      this.zeros = null;
      writeAddress(this.page.place);
      this.again();
    });
    $('now-taxel').addEventListener('change', () => this.choose($('now-taxel').value));
    $('now-hold').addEventListener('click', () => this.hold());
    $('now-zero').addEventListener('click', () => this.zero());
    $('now-csv').addEventListener('click', () => {
      this.table(true);
      offer('last-values.csv', csv($('now-table').querySelector('table')));
    });
    $('fold-now').addEventListener('toggle', () => this.table(true));
    $('now-pads').addEventListener('keydown', e => {
      if (e.ctrlKey || e.metaKey || e.altKey) return;
      if (e.key === 'z') this.zero();
      else if (e.key === 'h') this.hold();
      else return;
      e.preventDefault();
    });
  }

  /** Asks anew, if anybody looks. */
  again() {
    this.ticket++;
    if (this.visible && !document.hidden && !this.held) this.ask(this.ticket);
    else $('a7').classList.add('stale');
  }

  /**
   * Asks for one state after the other until another begins to ask, or nobody looks any more.
   * @param {number} ticket
   * @returns {Promise<void>}
   */
  async ask(ticket) {
    let after = 0;
    while (ticket === this.ticket) {
      try {
        const state = await get('/api/now', {after, log: this.page.place.log, taxel: this.page.place.taxel, layout: this.layout?.id ?? ''});
        if (ticket !== this.ticket) return;
        if (state) {
          const taxel = this.page.place.taxel;
          this.draw(state);
          // If only this state told which taxels there are, the curve of the one now chosen is still to come.
          after = taxel === this.page.place.taxel ? state.version : 0;
        }
        await new Promise(done => setTimeout(done, RESTING));
      } catch (e) {
        if (ticket !== this.ticket) return;
        after = 0;
        if (!(e instanceof Refused || /fetch|load/i.test(e.message))) console.error(e); // a defect of this page
        if (e instanceof Refused) {
          this.nothing(el('span', {}, e.message[0].toUpperCase() + e.message.slice(1) + '.'));
          if (this.page.place.log) $('now-faults').replaceChildren(el('button', {class: 'plain', onclick: () => this.newest()}, 'Show the newest log'));
        }
        await new Promise(done => setTimeout(done, AGAIN));
      }
    }
  }

  /** Back to whatever log is the newest. */
  newest() {
    this.page.place.log = '';
    writeAddress(this.page.place);
    this.again();
  }

  /** Stands still, or goes on. */
  hold() {
    this.held = !this.held;
    $('now-hold').setAttribute('aria-pressed', String(this.held));
    this.again();
  }

  /** What is read now counts as zero; once more, and the log's first second does again. */
  zero() {
    if (!this.state?.last) return;
    const last = this.state.last;
    this.zeros = this.zeros ? null : new Map(this.layout.taxels.map(([column], i) => [column, last[i]]));
    $('now-zero').setAttribute('aria-pressed', String(this.zeros !== null));
    this.pads.rescale();
    this.draw(this.state);
  }

  /** @param {string} column of the taxel whose curve is wanted */
  choose(column) {
    this.page.place.taxel = column;
    writeAddress(this.page.place);
    if (this.state) this.draw(this.state);
    this.again();
  }

  /**
   * Only a sentence.
   * @param {Element} words
   */
  nothing(words) {
    this.state = null;
    this.layout = null;
    $('now-say').replaceChildren(words);
    $('now-live').hidden = true;
    $('now-csv').hidden = true;
    $('now-faults').replaceChildren();
    $('a7').textContent = '';
  }

  /**
   * Draws a state.
   * @param {NowState} s
   */
  draw(s) {
    if (s.state === 'none') {
      const folder = this.page.project?.folder ?? 'DIR';
      this.nothing(el('span', {}, el('b', {}, 'Nothing is recorded yet. '), 'Start ', el('code', {}, `./gripwright record ${folder} --from serial:/dev/ttyACM0?baud=115200`),
        ' (or ', el('code', {}, 'tcp:HOST:PORT'), ', ', el('code', {}, 'file:PATH'), ', ', el('code', {}, '-'), '): what it takes in shows here while it comes.'));
      $('a7').textContent = 'nothing recorded';
      $('a7').classList.remove('stale');
      return;
    }
    if (s.state === 'no log' || !s.known) {
      this.nothing(el('span', {}, s.state === 'no log' ? `logs/${s.log} is no log that can be followed: ${s.refusal}.` : `logs/${s.log} has only begun.`));
      this.logs(s);
      return;
    }
    $('now-live').hidden = false; // before anything is drawn: what is hidden has no width
    if (s.layout?.taxels) {
      this.layout = {...s.layout, id: s.layoutId};
      this.pads.build(this.layout);
      this.curves.clear();
      this.tabled = 0;
      $('now-taxel').replaceChildren(...this.layout.taxels.map(([column]) => el('option', {}, column)));
    }
    if (!this.layout) return;
    this.state = s;
    const place = this.page.place;
    const names = this.layout.taxels.map(([column]) => column);
    if (!names.includes(place.taxel)) {
      place.taxel = names[0] ?? '';
      writeAddress(place);
    }
    $('now-csv').hidden = names.length === 0;
    $('now-taxel').value = place.taxel;
    this.logs(s);
    this.sentence(s);
    this.tallies(s);
    this.warnings(s);
    const changes = names.map((column, i) => this.change(s, column, i));
    this.pads.show(s, changes, place.taxel);
    this.one(s, names.indexOf(place.taxel), changes);
    const index = names.indexOf(place.taxel);
    this.curves.show(s, this.layout, place.taxel, index < 0 ? null : this.zeroOf(s, place.taxel, index));
    this.table(false);
    document.documentElement.dataset.now = `${s.state} ${s.readings}`;
  }

  /**
   * @param {NowState} s
   * @param {string} column
   * @param {number} index of the taxel
   * @returns {number|null} what counts as its zero
   */
  zeroOf(s, column, index) {
    return this.zeros?.get(column) ?? s.zero[index];
  }

  /**
   * @param {NowState} s
   * @param {string} column
   * @param {number} index of the taxel
   * @returns {number|null} by how much it is above its zero
   */
  change(s, column, index) {
    const value = s.last[index];
    const zero = this.zeroOf(s, column, index);
    return value === null || zero === null ? null : value - zero;
  }

  /** @param {NowState} s */
  logs(s) {
    const shown = s.logs.map(l => l.name).join('\n') + '\n\n' + s.log;
    if (shown !== this.shownLogs) {
      this.shownLogs = shown;
      $('now-log').replaceChildren(el('option', {value: ''}, 'the newest'), ...s.logs.map(l => el('option', {}, l.name)));
    }
    $('now-log').value = this.page.place.log;
  }

  /** @param {NowState} s */
  sentence(s) {
    const log = el('span', {class: 'path'}, 'logs/' + s.log);
    const rate = `${num(s.rate)} readings and ${big(s.values)} values a second`;
    const from = s.source ? ` from ${s.source}` : '';
    $('now-say').replaceChildren(...(s.state === 'running'
      ? [el('b', {}, `Recording for ${lasting(s.arrival)}`), `${from} into `, log, `, begun ${clock(s.started)}: ${rate}.`]
      : [el('b', {}, 'No recording runs. '), log, `${from} ended ${clock(s.wall)} after ${lasting(s.arrival)}; its last values are drawn.`]),
    s.reading ? ' Reading what was written before.' : '',
    s.skipped ? ` ${big(s.skipped / 1e6)}\u00a0MB of it were left out to keep up; it is counted from ${lasting(s.since ?? 0)} on.` : '');
    $('a7').textContent = s.state === 'running' ? `${num(s.rate)} readings a second` : 'no recording runs';
    $('a7').classList.remove('stale');
  }

  /** @param {NowState} s */
  tallies(s) {
    const stamps = [s.back ? `${big(s.back)} go back` : '', s.equal ? `${big(s.equal)} repeat` : ''].filter(t => t).join(', ');
    const others = Object.entries(s.others).map(([name, value]) => `${name} ${reading(value)}${this.layout.units[name] ? '\u00a0' + this.layout.units[name] : ''}`);
    const rows = [
      ['readings', big(s.readings)],
      ['lost', s.lost || 'not known: no column counts the readings'],
      ['stamps', stamps || 'in order'],
      ['malformed', s.malformed ? `${big(s.malformed)}, in the side file; the last, ${s.lastFault}` : 'none'],
      ...(s.unreadable ? [['not rows of the log', `${big(s.unreadable)}; the last, ${s.lastUnreadable}`]] : []),
      ...(others.length ? [['beside them', others.join(', ')]] : []),
      ...(s.pads ?? []).map(p => [p.name, `${num(p.force, 2)}\u00a0N \u00b1 ${num(p.error, 2)}${p.touched ? ', touched' : ''}`]),
    ];
    const box = $('now-tallies');
    // In place, so that what is being selected or read does not vanish four times a second.
    if (box.childElementCount !== 2 * rows.length) box.replaceChildren(...rows.flatMap(() => [el('dt'), el('dd')]));
    rows.forEach(([name, words], i) => {
      for (const [node, text] of [[box.children[2 * i], name], [box.children[2 * i + 1], words]]) if (node.textContent !== text) node.textContent = text;
    });
  }

  /** @param {NowState} s */
  warnings(s) {
    const box = $('now-faults');
    if (box.querySelectorAll('.words').length !== s.warnings.length) {
      box.replaceChildren(...(s.warnings.length ? [el('div', {class: 'fault'}, el('span', {class: 'tag'}, s.warnings.length > 1 ? 'warnings' : 'warning'), ...s.warnings.map(() => el('span', {class: 'words'})))] : []));
    }
    box.querySelectorAll('.words').forEach((/** @type {Element} */ node, /** @type {number} */ i) => { if (node.textContent !== s.warnings[i]) node.textContent = s.warnings[i]; });
    // For ears: when a warning is new, not whenever its seconds go on.
    const heard = s.warnings.map(w => w.replace(/[\d.]+ s$/, '')).join('. ');
    if (heard !== this.heard) $('now-heard').textContent = heard || 'no warnings';
    this.heard = heard;
  }

  /**
   * The chosen taxel in words.
   * @param {NowState} s
   * @param {number} index
   * @param {(number|null)[]} changes
   */
  one(s, index, changes) {
    if (index < 0) {
      $('now-one').textContent = 'The log has no column that is known to be a taxel. Name them under readings in pads.yaml.';
      return;
    }
    const [column, pad] = this.layout.taxels[index];
    const unit = this.layout.unit ? '\u00a0' + this.layout.unit : '';
    const change = changes[index];
    const force = s.newtons?.[index];
    $('now-one').replaceChildren(el('b', {}, column), pad ? ` of ${pad}: ` : ': ',
      s.last[index] === null ? 'no number' : `${reading(s.last[index])}${unit}`,
      change === null ? '' : `, ${num(Math.abs(change), 1)}${unit} ${change < 0 ? 'below' : 'above'} its zero`,
      force === null || force === undefined ? '' : `, ${num(force, 2)}\u00a0N`,
      STATES[s.marks[index]] ? `; ${STATES[s.marks[index]]}` : '');
  }

  /**
   * Every last value, if that is open; once a second is enough.
   * @param {boolean} always
   */
  table(always) {
    const s = this.state;
    const now = performance.now();
    if (!s || !always && (!$('fold-now').open || now - this.tabled < TABLE)) return;
    this.tabled = now;
    const unit = this.layout.unit ? ', ' + this.layout.unit : '';
    const heads = ['taxel', 'pad', 'last value' + unit, 'above its zero' + unit, ...(s.newtons ? ['force, N'] : []), 'state'];
    const rows = this.layout.taxels.map(([column, pad], i) => {
      const change = this.change(s, column, i);
      const cells = [reading(s.last[i]), change === null ? '\u2013' : num(change, 1), ...(s.newtons ? [s.newtons[i] === null ? '\u2013' : num(s.newtons[i], 3)] : [])];
      return el('tr', {}, el('th', {scope: 'row'}, column), el('td', {}, pad), ...cells.map(c => el('td', {class: 'num'}, c)), el('td', {}, STATES[s.marks[i]] ?? ''));
    });
    $('now-table').replaceChildren(scrolled('Last value of every taxel', el('table', {}, el('thead', {}, el('tr', {}, ...heads.map((h, i) => el('th', {scope: 'col', class: i > 1 && i < heads.length - 1 ? 'num' : ''}, h)))), el('tbody', {}, ...rows))));
  }
}
