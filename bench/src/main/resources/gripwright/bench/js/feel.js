// Question 6: what pads with chips under their rubber feel. Worked out when it is looked at first.
import {Refused, get, text} from './api.js';
import {$, csv, el, fault, num, offer, scrolled} from './dom.js';
import {valuesTable} from './edit.js';

/** @typedef {import('./types.js').Page} Page */

/** The section of the pads. */
export class FeelView {
  /** @param {Page} page */
  constructor(page) {
    this.page = page;
    this.revision = '';
    this.visible = false;
    new IntersectionObserver(entries => {
      this.visible = entries.some(e => e.isIntersecting);
      if (this.visible) this.load();
    }).observe($('q6'));
    $('feel-csv').addEventListener('click', () => offer('pads.csv', csv($('feel').querySelector('table'))));
  }

  /** The files are others now. */
  again() {
    const has = this.page.project && Object.keys(this.page.project.values).some(k => k.startsWith('pads.yaml: '));
    if (this.page.project) $('feel-values').replaceChildren(...(has ? [valuesTable('pads.yaml: ', this.page.project, this.page.saved, 'pads.yaml')] : []));
    if (this.revision) $('a6').classList.add('stale');
    if (this.visible) this.load();
  }

  /**
   * Asks for the answers, once for each state of the files.
   * @returns {Promise<void>}
   */
  async load() {
    const wanted = this.page.project?.revision ?? '';
    if (!wanted || wanted === this.revision || this.page.project?.faults) return;
    this.revision = wanted;
    $('feel-say').textContent = 'Working out what the rubber passes on to the chips; this takes some seconds.';
    try {
      const answer = await get('/api/pads');
      await this.draw(answer.pads);
    } catch (e) {
      if (!(e instanceof Refused)) {
        this.revision = '';
        return;
      }
      $('feel').replaceChildren();
      $('feel-pictures').replaceChildren();
      $('feel-csv').hidden = true;
      $('a6').textContent = '';
      if (e.status === 404) $('feel-say').textContent = e.message[0].toUpperCase() + e.message.slice(1) + '.';
      else $('feel').replaceChildren(fault('not computed', e.message));
    }
  }

  /**
   * Draws sentence, table and pictures.
   * @param {any[]} pads
   * @returns {Promise<void>}
   */
  async draw(pads) {
    const blind = pads.filter(p => p.blindMm > 0);
    const worst = Math.max(...pads.map(p => p.between));
    $('feel-say').replaceChildren(blind.length
      ? el('span', {}, el('b', {}, `${blind.length} of ${pads.length} pads have blind gaps`), ` between their chips, ${num(Math.max(...blind.map(p => p.blindMm)))}\u00a0mm each at most. `)
      : el('span', {}, 'No pad has blind gaps. '),
    `The smallest force that is felt: ${num(Math.min(...pads.map(p => p.overChip)), 3)}\u00a0N over a chip, ${num(worst, 2)}\u00a0N between two.`);
    $('a6').classList.remove('stale');
    $('a6').textContent = blind.length ? `${blind.length} of ${pads.length} pads with blind gaps` : 'no blind gaps';
    const heads = ['pad', 'chip', 'chips', 'pitch, mm', 'felt over a chip, N', 'felt between two, N', 'clips at, N', 'recommended pitch, mm', 'blind gaps, mm'];
    const rows = pads.map(p => el('tr', {}, el('th', {scope: 'row'}, p.name), el('td', {}, p.chip),
      ...[[p.chips, 0], [p.pitchMm, 1], [p.overChip, 4], [p.between, 3], [p.clips, 1], [p.recommendedMm, 1], [p.blindMm, 1]].map(([v, d]) => el('td', {class: 'num'}, num(v, d)))));
    $('feel').replaceChildren(scrolled('What each pad feels', el('table', {}, el('caption', {}, 'What each pad feels by noise alone'),
      el('thead', {}, el('tr', {}, ...heads.map((h, i) => el('th', {scope: 'col', class: i > 1 ? 'num' : ''}, h)))), el('tbody', {}, ...rows))),
    ...[...new Set(pads.flatMap(p => p.warnings))].map(w => el('p', {class: 'small'}, w)));
    $('feel-csv').hidden = false;
    const shown = new Set();
    const figures = [];
    for (const p of pads) {
      const drawing = await text('/api/pads.svg?' + new URLSearchParams({pad: p.name}));
      const inside = drawing.slice(drawing.indexOf('>'));
      if (shown.has(inside)) continue;
      shown.add(inside);
      const figure = el('figure');
      figure.innerHTML = drawing;
      figures.push(el('h3', {}, p.name), figure);
    }
    $('feel-pictures').replaceChildren(...figures);
  }
}
