// Values of the project's files, changed in place. The line that will change is shown before it is saved.
import {get, post} from './api.js';
import {el, fault} from './dom.js';

let open = null;

/** Key as people read it. */
const spoken = key => key.replace(/^\S+: /, '').replace(/\[(\d+)\]/g, (_, n) => ' ' + (Number(n) + 1)).replaceAll('.', ', ');

function differing(before, after) {
  let a = 0;
  while (a < before.length && a < after.length && before[a] === after[a]) a++;
  let b = 0;
  while (b < before.length - a && b < after.length - a && before.at(-1 - b) === after.at(-1 - b)) b++;
  return [a, b];
}

function line(tag, text, [a, b]) {
  return el(tag, {}, (tag === 'del' ? '\u2212 ' : '+ ') + text.slice(0, a), el('b', {}, text.slice(a, text.length - b)), text.slice(text.length - b));
}

export function close() {
  open?.remove();
  open = null;
}

/**
 * Opens the field of a value beside the element that shows it.
 * @param {string} key @param {any} project as served @param {Element} at @param {(key: string) => void} saved
 */
export function edit(key, project, at, saved) {
  close();
  const old = project.values[key];
  if (old === undefined) return;
  const quoted = /^(["']).*\1$/.test(old);
  const input = el('input', {value: quoted ? old.slice(1, -1) : old, 'aria-label': spoken(key), id: 'field', autocomplete: 'off', spellcheck: 'false'});
  const file = el('div', {class: 'file', id: 'file-line'});
  const wrong = el('div', {id: 'field-fault'});
  const save = el('button', {class: 'do', id: 'save'}, 'Save to the file');
  const back = el('button', {class: 'plain'}, 'Leave it');
  const card = el('div', {class: 'card', role: 'dialog', 'aria-label': spoken(key)},
    el('h3', {}, spoken(key)), el('div', {class: 'field'}, input), file, wrong, el('div', {class: 'row'}, save, back));
  let asked = 0;
  const leave = () => {
    close();
    at.focus?.();
  };
  const preview = async () => {
    const mine = ++asked;
    save.disabled = true;
    try {
      const p = await get('/api/preview', {key, value: input.value});
      if (mine !== asked) return;
      const d = differing(p.before, p.after);
      const same = p.before === p.after;
      file.replaceChildren(el('span', {class: 'where'}, p.file + ', line ' + p.line + (same ? ', as it is' : ', will change')), line('del', p.before.trim(), same ? [0, 0] : differing(p.before.trim(), p.after.trim())));
      if (!same) file.append(line('ins', p.after.trim(), differing(p.before.trim(), p.after.trim())));
      void d;
      input.classList.toggle('bad', p.faults !== '');
      input.setAttribute('aria-invalid', String(p.faults !== ''));
      wrong.replaceChildren(...(p.faults ? [fault('not saved', p.faults)] : []));
      save.disabled = p.faults !== '' || same;
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
  input.addEventListener('input', () => {
    asked++;
    save.disabled = true;
    clearTimeout(timer);
    timer = setTimeout(preview, 120);
  });
  card.addEventListener('keydown', e => {
    if (e.key === 'Escape') leave();
    if (e.key === 'Enter' && e.target === input) preview().then(send);
  });
  save.addEventListener('click', send);
  back.addEventListener('click', leave);
  document.body.append(card);
  const box = at.getBoundingClientRect();
  card.style.left = Math.max(8, Math.min(box.left + scrollX, scrollX + document.documentElement.clientWidth - card.offsetWidth - 16)) + 'px';
  card.style.top = box.bottom + scrollY + 8 + 'px';
  open = card;
  input.focus({preventScroll: true});
  input.select();
  preview();
}

/** Makes an element that shows a value one that can be changed. */
export function editable(node, key, project, saved) {
  node.classList.add('e');
  node.setAttribute('tabindex', '0');
  node.setAttribute('role', 'button');
  node.setAttribute('aria-label', 'change ' + spoken(key) + ', now ' + project.values[key]);
  const go = () => edit(key, project, node, saved);
  node.addEventListener('click', go);
  node.addEventListener('keydown', e => {
    if (e.key === 'Enter' || e.key === ' ') {
      e.preventDefault();
      go();
    }
  });
  return node;
}

/** A table of all values whose key starts so. */
export function valuesTable(start, project, saved, caption) {
  const body = el('tbody');
  for (const [key, value] of Object.entries(project.values)) {
    if (key.startsWith(start)) {
      body.append(el('tr', {}, el('td', {}, spoken(key)), el('td', {}, editable(el('span', {}, value), key, project, saved))));
    }
  }
  return el('table', {class: 'vals'}, el('caption', {}, caption), body);
}
