// Question 1: the objects, and how far off they may be placed.
import {text} from './api.js';
import {$, csv, el, offer, scrolled} from './dom.js';
import {editable, valuesTable} from './edit.js';

/** @typedef {import('./types.js').Project} Project */
/** @typedef {import('./types.js').Thing} Thing */

const FACTS = ['mass', 'surface', 'squeeze at most', 'weight', 'stands', 'turned', 'from', 'mesh', 'grips', 'mesh unit'];

/**
 * The keys under which an object's sizes stand.
 * @param {Project} p
 * @param {string} at start of the object's keys
 * @returns {string[]}
 */
const sizes = (p, at) => Object.keys(p.values).filter(k => k.startsWith(at)
  && !FACTS.includes(k.slice(at.length)) && !/\.(at|turned)\[|centre of mass|grips\[/.test(k));

/**
 * Draws the section anew.
 * @param {Project} p
 * @param {(key: string) => void} saved
 * @returns {Promise<void>}
 */
export async function needSection(p, saved) {
  $('objects').innerHTML = await text('/api/objects.svg');
  /** @param {string} key @param {string} [otherwise] what the file does not say itself */
  const value = (key, otherwise = '\u2013') => (p.values[key] === undefined
    ? el('span', {class: 'none'}, otherwise || '\u2013')
    : editable(el('span', {'data-key': key}, p.values[key].replace('+-', '\u00b1')), key, p, saved));
  const place = 'need.yaml: placement.';
  $('need-say').replaceChildren(`${p.objects.length} objects. Each stands within `, value(place + 'x'), ' along x, ', value(place + 'y'), ' along y and ',
    value(place + 'turn'), ' in turn of its place, the hand within ', value(place + 'height'), ' of its height; ', value('need.yaml: wanted.success'), ' of the pick-ups must work.');
  const rubbers = [...new Set(Object.keys(p.values).filter(k => /^hand\.yaml: friction\.[^.]+\./.test(k)).map(k => k.split('.')[2]))];
  /** @param {Thing} o */
  const friction = o => rubbers.map(r => 'hand.yaml: friction.' + r + '.' + o.surface).filter(k => p.values[k] !== undefined);
  const body = el('tbody');
  p.objects.forEach((o, n) => {
    const at = 'need.yaml: objects.' + o.name + '.';
    const shape = el('td');
    sizes(p, at).forEach((k, i) => shape.append(i ? ', ' : '', k.slice(at.length).replace(/parts\[(\d+)\]\./, '').replace(/\[(\d+)\]/, (_, d) => ' ' + 'xyz'[d]).replaceAll('.', ' ') + ' ', value(k)));
    for (const k of ['from', 'mesh']) if (p.values[at + k] !== undefined) shape.append(value(at + k));
    const mu = el('td');
    friction(o).forEach((k, i) => mu.append(i ? ', ' : '', value(k)));
    body.append(el('tr', {}, el('td', {class: 'num'}, String(n + 1)), el('th', {scope: 'row'}, o.name), shape, el('td', {}, value(at + 'mass', o.mass)),
      el('td', {}, value(at + 'surface')), mu, el('td', {}, value(at + 'squeeze at most', o.squeeze)), el('td', {}, value(at + 'stands', o.stands)),
      el('td', {}, o.grips.join(', ')), el('td', {}, value(at + 'weight', String(o.weight)))));
  });
  const heads = ['no.', 'object', 'size', 'mass', 'surface', 'friction', 'squeeze at most', 'stands', 'grips tried', 'weight'];
  const table = el('table', {}, el('caption', {}, 'The same in numbers; what is blue can be changed'),
    el('thead', {}, el('tr', {}, ...heads.map(h => el('th', {scope: 'col'}, h)))), body);
  $('objects-table').replaceChildren(scrolled('The objects in numbers', table));
  $('objects-csv').onclick = () => offer('objects.csv', csv(table));
  $('need-values').replaceChildren(valuesTable('need.yaml: ', p, saved, 'need.yaml'));
  $('a1').textContent = `${p.objects.length} objects, ${p.values[place + 'x'] ?? 'exactly placed'}`;
}
