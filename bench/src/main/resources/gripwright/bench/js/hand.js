// Question 2: the hand to scale, with dimensions that can be changed.
import {text} from './api.js';
import {$, el} from './dom.js';
import {editable, spoken, valuesTable} from './edit.js';
import {pullable} from './pull.js';

/** @typedef {import('./types.js').Project} Project */

/**
 * Draws the section anew.
 * @param {Project} p
 * @param {(key: string) => void} saved
 * @returns {Promise<void>}
 */
export async function handSection(p, saved) {
  $('hand').innerHTML = await text('/api/hand.svg');
  $('hand').querySelector('svg').setAttribute('role', 'group'); // no plain picture: its values can be changed
  $('hand').querySelectorAll('[data-key]').forEach(t => {
    if (p.values[t.dataset.key] !== undefined) editable(t, t.dataset.key, p, saved);
  });
  pullable($('hand'), p, saved);
  const motors = p.motors.length === 1 ? 'one motor' : p.motors.length + ' motors';
  const pull = p.motors.map(m => 'hand.yaml: drive.' + m + '.greatest tension').filter(k => p.values[k] !== undefined);
  const say = $('hand-say');
  say.replaceChildren(`${p.hand}: ${p.fingers.length} fingers, ${motors}`);
  pull.forEach((k, i) => say.append(i ? ' and ' : ' pulling at most ', editable(el('span', {}, p.values[k]), k, p, saved)));
  say.append('. Click a blue value to change it in hand.yaml, or pull at a blue arrowhead.');
  $('hand-values').replaceChildren(valuesTable('hand.yaml: ', p, saved, 'hand.yaml'));
  $('assumed').replaceChildren(el('table', {class: 'vals'}, el('tbody', {}, ...p.assumptions.map(([where, what]) => el('tr', {}, el('td', {}, where), el('td', {}, what))))));
  $('a2').textContent = `${p.fingers.length} fingers, ${motors}`;
}

/**
 * Shows which value the last change touched, until the next one.
 * @param {Project} before
 * @param {Project} now
 */
export function showChange(before, now) {
  const keys = Object.keys(now.values).filter(k => before.values[k] !== undefined && before.values[k] !== now.values[k]);
  document.querySelectorAll('.e.moved').forEach(n => n.classList.remove('moved'));
  $('a1c').textContent = $('a2c').textContent = $('a6c').textContent = '';
  // A finger that is like another changes with it; the pattern's own value is the first.
  for (const key of keys) {
    document.querySelectorAll('[data-key]').forEach(n => {
      if (/** @type {HTMLElement} */ (n).dataset.key === key) n.classList.add('moved');
    });
  }
  if (keys.length) {
    const key = keys[0];
    const where = key.startsWith('hand.yaml') ? 'a2c' : key.startsWith('pads.yaml') ? 'a6c' : 'a1c';
    $(where).textContent = `\u0394 ${spoken(key)}: ${now.values[key]}, was ${before.values[key]}`;
  }
}
