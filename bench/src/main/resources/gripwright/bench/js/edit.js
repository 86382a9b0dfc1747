// Values of the project's files, changed in place. The line that will change is shown before it is saved.
import {get, post} from './api.js';
import {el, fault} from './dom.js';

/** @typedef {import('./types.js').Project} Project */

/** @type {{card: HTMLElement, left: () => void}|null} */
let open = null;

/**
 * A key as people read it.
 * @param {string} key
 * @returns {string}
 */
export const spoken = key => key.replace(/^\S+: /, '').replace(/\[(\d+)\]/g, (_, n) => ' ' + (Number(n) + 1)).replaceAll('.', ', ');

/**
 * A value without the quotes it may have in the file.
 * @param {string} value
 * @returns {string}
 */
export const unquoted = value => (/^(["']).*\1$/.test(value) ? value.slice(1, -1) : value);

/**
 * The number a value starts with, the rest, and the size of its last digit.
 * @param {string} value
 * @returns {{number: number, rest: string, step: number}|null}
 */
export function parsed(value) {
  const m = value.trim().match(/^([-\u2212+]?\d+(?:[.,](\d+))?)(?!\d)(.*)$/);
  if (!m) return null;
  const number = Number(m[1].replace(',', '.').replace('\u2212', '-'));
  return Number.isFinite(number) ? {number, rest: m[3], step: 10 ** -(m[2]?.length ?? 0)} : null;
}

/**
 * The value with another number, as many decimals as before.
 * @param {string} value
 * @param {number} number
 * @returns {string}
 */
export function withNumber(value, number) {
  const p = parsed(value);
  return p ? number.toFixed(Math.round(-Math.log10(p.step))) + p.rest : value;
}

/**
 * The value some steps of its last digit further on.
 * @param {string} value
 * @param {number} steps
 * @returns {string}
 */
export function nudged(value, steps) {
  const p = parsed(value);
  return p ? withNumber(value, p.number + steps * p.step) : value;
}

/**
 * How far an arrow key nudges: ten times as far with Shift.
 * @param {KeyboardEvent} e
 * @returns {number} steps, 0 for another key
 */
const stepsOf = e => (e.key === 'ArrowUp' ? 1 : e.key === 'ArrowDown' ? -1 : 0) * (e.shiftKey ? 10 : 1);

/**
 * How many characters are alike at the start and at the end of two lines.
 * @param {string} before
 * @param {string} after
 * @returns {number[]}
 */
function differing(before, after) {
  let a = 0;
  while (a < before.length && a < after.length && before[a] === after[a]) a++;
  let b = 0;
  while (b < before.length - a && b < after.length - a && before.at(-1 - b) === after.at(-1 - b)) b++;
  return [a, b];
}

/**
 * @param {string} tag
 * @param {string} text
 * @param {number[]} alike
 * @returns {Element}
 */
function line(tag, text, [a, b]) {
  return el(tag, {}, (tag === 'del' ? '\u2212 ' : '+ ') + text.slice(0, a), el('b', {}, text.slice(a, text.length - b)), text.slice(text.length - b));
}

/**
 * Puts the card under what it belongs to, or above it, or where it is in sight as a whole.
 * @param {HTMLElement} card
 * @param {Element} at
 */
function place(card, at) {
  const box = at.getBoundingClientRect();
  const wide = document.documentElement.clientWidth;
  const high = document.documentElement.clientHeight;
  const under = box.bottom + 8;
  const above = box.top - 8 - card.offsetHeight;
  const top = under + card.offsetHeight <= high - 8 ? under : above >= 8 ? above : Math.max(8, high - 8 - card.offsetHeight);
  card.style.left = scrollX + Math.max(8, Math.min(box.left, wide - card.offsetWidth - 16)) + 'px';
  card.style.top = scrollY + (box.bottom < 0 || box.top > high ? under : top) + 'px';
}

/** Closes the open field without saving. */
export function close() {
  const was = open;
  open = null;
  was?.card.remove();
  was?.left();
}

/**
 * Opens the field of a value beside the element that shows it.
 * @param {string} key
 * @param {Project} project as served
 * @param {Element} at
 * @param {(key: string) => void} saved
 * @param {{value?: string, left?: () => void}} [how] a value to start with; told when the field is closed
 */
export function edit(key, project, at, saved, how = {}) {
  close();
  const old = project.values[key];
  if (old === undefined) return;
  const input = el('input', {value: how.value ?? unquoted(old), 'aria-label': spoken(key), id: 'field', autocomplete: 'off', spellcheck: 'false'});
  const file = el('div', {class: 'file', id: 'file-line', tabindex: '0', role: 'region', 'aria-label': 'the line of the file'});
  const wrong = el('div', {id: 'field-fault'});
  const save = el('button', {class: 'do', id: 'save'}, 'Save to the file');
  const back = el('button', {class: 'plain', id: 'leave'}, 'Back to ' + unquoted(old));
  const also = el('p', {class: 'small', id: 'also'});
  const card = el('div', {class: 'card', role: 'dialog', 'aria-label': spoken(key)},
    el('h3', {}, spoken(key)), el('div', {class: 'field'}, input, el('span', {class: 'small'}, 'was ' + unquoted(old))),
    also, file, wrong, el('div', {class: 'row'}, save, back));
  let asked = 0;
  const leave = () => {
    close();
    /** @type {HTMLElement} */ (at).focus?.({preventScroll: true});
  };
  const preview = async () => {
    const mine = ++asked;
    save.disabled = true;
    try {
      const p = await get('/api/preview', {key, value: input.value});
      if (mine !== asked) return;
      const same = p.before === p.after;
      const alike = same ? [p.before.trim().length, 0] : differing(p.before.trim(), p.after.trim());
      file.replaceChildren(el('span', {class: 'where'}, p.file + ', line ' + p.line + (same ? ', as it is' : '; nothing else in the file changes')), line('del', p.before.trim(), alike));
      if (!same) file.append(line('ins', p.after.trim(), alike));
      input.classList.toggle('bad', p.faults !== '');
      input.setAttribute('aria-invalid', String(p.faults !== ''));
      wrong.replaceChildren(...(p.faults ? [fault('not saved', p.faults)] : []));
      save.disabled = p.faults !== '' || same;
      also.textContent = p.also.length ? 'The same text in the file, so changed with it: ' + p.also.map(spoken).join('; ') + '.' : '';
      place(card, at); // it has grown
    } catch (e) {
      if (mine === asked) {
        input.classList.add('bad');
        wrong.replaceChildren(fault('not saved', e.message));
      }
    }
  };
  const send = async () => {
    if (save.disabled) return;
    save.disabled = true;
    try {
      await post('/api/value', {key, value: input.value, revision: project.revision});
      leave();
      saved(key);
    } catch (e) {
      wrong.replaceChildren(fault('not saved', e.message));
      if (e.more?.now !== undefined) {
        wrong.firstChild.append(el('pre', {}, 'in the file now: ' + e.more.now + '\nyours:           ' + e.more.yours),
          el('div', {class: 'row'}, el('button', {class: 'plain', onclick: leave}, 'Keep what is in the file'),
            el('button', {class: 'plain', onclick: async () => {
              project.revision = (await get('/api/project')).revision;
              await preview();
              await send();
            }}, 'Write mine over it')));
      }
    }
  };
  let timer = 0;
  const changed = () => {
    asked++;
    save.disabled = true;
    clearTimeout(timer);
    timer = setTimeout(preview, 120);
  };
  input.addEventListener('input', changed);
  card.addEventListener('keydown', e => {
    if (e.key === 'Escape') leave();
    if (e.key === 'Enter' && e.target === input) preview().then(send);
    if (stepsOf(e) !== 0 && e.target === input && parsed(input.value)) {
      e.preventDefault();
      input.value = nudged(input.value, stepsOf(e));
      changed();
    }
  });
  save.addEventListener('click', send);
  back.addEventListener('click', leave);
  document.body.append(card);
  place(card, at);
  open = {card, left: how.left ?? (() => {})};
  input.focus({preventScroll: true});
  input.select();
  preview();
}

/**
 * Makes an element that shows a value one that can be changed: by a click, Enter, or the arrow keys.
 * @param {any} node
 * @param {string} key
 * @param {Project} project
 * @param {(key: string) => void} saved
 * @returns {any} the node
 */
export function editable(node, key, project, saved) {
  node.classList.add('e');
  node.setAttribute('tabindex', '0');
  node.setAttribute('role', 'button');
  node.setAttribute('aria-label', 'change ' + spoken(key) + ', now ' + project.values[key]);
  node.addEventListener('click', () => edit(key, project, node, saved));
  node.addEventListener('keydown', e => {
    if (e.key === 'Enter' || e.key === ' ') {
      e.preventDefault();
      edit(key, project, node, saved);
    } else if (stepsOf(e) !== 0 && parsed(unquoted(project.values[key]))) {
      e.preventDefault();
      edit(key, project, node, saved, {value: nudged(unquoted(project.values[key]), stepsOf(e))});
    }
  });
  return node;
}

/**
 * A table of all values whose key starts so.
 * @param {string} start
 * @param {Project} project
 * @param {(key: string) => void} saved
 * @param {string} caption
 * @returns {Element}
 */
export function valuesTable(start, project, saved, caption) {
  const body = el('tbody');
  for (const [key, value] of Object.entries(project.values)) {
    if (key.startsWith(start)) {
      body.append(el('tr', {}, el('td', {}, spoken(key)), el('td', {}, editable(el('span', {'data-key': key}, value), key, project, saved))));
    }
  }
  return el('table', {class: 'vals'}, el('caption', {}, caption), body);
}
