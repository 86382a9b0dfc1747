// The page as a whole: what is in view, the project, the keys, news from the server.
import {readAddress, writeAddress} from './address.js';
import {get, newToken, post} from './api.js';
import {ClosingView} from './closing.js';
import {$, el, fault} from './dom.js';
import {close as closeField} from './edit.js';
import {FeelView} from './feel.js';
import {handSection, showChange} from './hand.js';
import {MapView} from './map.js';
import {needSection} from './need.js';
import {NowView} from './now.js';
import {Stage} from './stage.js';
import {TrialsView} from './trials.js';

/** After so long at rest the whole closing is fetched [ms]. */
const LIVE_REST = 90;
const FARTHEST = 300;

/** @type {import('./types.js').Page} */
const page = {
  project: null,
  closing: null,
  place: {q: 1, object: '', grip: '', x: 0, y: 0, turn: 0, more: null, taxel: '', log: ''},
  go,
  saved: () => { load(); },
  play: () => closing.play(),
};

const closing = new ClosingView(page);
const map = new MapView(page);
const trials = new TrialsView(page);
const feel = new FeelView(page);
const now = new NowView(page);

// ---- a closing in view

let rest = 0;

/**
 * Puts a closing in view; fields that are not named stay. Resolves when its final state is drawn.
 * @param {Partial<import('./types.js').Place>} change
 * @param {boolean} [live] another is likely to follow at once
 */
async function go(change, live = false) {
  const p = page.place;
  const other = change.object !== undefined && change.object !== p.object || change.grip !== undefined && change.grip !== p.grip;
  if (!('more' in change)) p.more = null;
  Object.assign(p, change);
  fields();
  writeAddress(p);
  map.chosen();
  clearTimeout(rest);
  await closing.compute(!live, other || !page.closing);
  if (live) rest = setTimeout(() => closing.compute(true, false), LIVE_REST);
}

// ---- fields of the placement

let drawnObject = '';

/** Shows what is in view in its fields. */
function fields() {
  const p = page.place;
  const o = page.project?.objects.find(one => one.name === p.object);
  if (!o || !page.project) return;
  $('object').value = p.object;
  $('grip').replaceChildren(...page.project.grips.map(g => el('option', {value: g.name}, o.grips.includes(g.name) ? g.name : g.name + ' (not tried)')));
  $('grip').value = p.grip;
  for (const k of ['x', 'y', 'turn']) if (document.activeElement !== $(k)) $(k).value = +p[k].toFixed(2);
  $('more').textContent = p.more ? 'With friction, mass, pads and springs as in that run of the trials.' : '';
  const drawn = p.object + page.project.revision;
  if (closing.stage && drawnObject !== drawn) {
    closing.stage.setObject(o.parts);
    drawnObject = drawn;
  }
}

for (const k of ['x', 'y', 'turn']) {
  $(k).addEventListener('input', () => {
    const text = $(k).value.trim().replace(',', '.').replace('\u2212', '-');
    const v = Number(text);
    const most = k === 'turn' ? 360 : FARTHEST;
    const good = text !== '' && Number.isFinite(v) && Math.abs(v) <= most;
    $(k).classList.toggle('bad', !good);
    $(k).setAttribute('aria-invalid', String(!good));
    if (good) {
      $('place-fault').replaceChildren();
      go({[k]: v}, true);
    } else {
      $('place-fault').replaceChildren(fault('not moved', `${k} is '${$(k).value}'; expected a number of ${k === 'turn' ? 'degrees' : 'mm'}, ${-most} to ${most}, such as 12.5`));
    }
  });
}
$('object').addEventListener('change', () => {
  const object = $('object').value;
  const o = page.project?.objects.find(one => one.name === object);
  if (o) go({object, grip: o.grips.includes(page.place.grip) ? page.place.grip : o.grips[0]});
});
$('grip').addEventListener('change', () => go({grip: $('grip').value}));
$('nominal').addEventListener('click', () => go({x: 0, y: 0, turn: 0}));
document.querySelectorAll('[data-view]').forEach(b => b.addEventListener('click', () => setView(/** @type {HTMLElement} */ (b).dataset.view ?? '')));

/** @param {string} name */
function setView(name) {
  closing.stage?.setView(name);
  document.querySelectorAll('[data-view]').forEach(b => b.setAttribute('aria-pressed', String(/** @type {HTMLElement} */ (b).dataset.view === name)));
}

/**
 * Moves the object on the table.
 * @param {number} dx
 * @param {number} dy
 * @param {number} [turn]
 */
function move(dx, dy, turn = 0) {
  const p = page.place;
  const within = (v, most) => Math.max(-most, Math.min(most, v));
  go({x: within(p.x + dx, FARTHEST), y: within(p.y + dy, FARTHEST), turn: within(p.turn + turn, 360)}, true);
}

$('stage').addEventListener('keydown', e => {
  const step = e.shiftKey ? 5 : 1;
  /** @type {Object<string, string>} */
  const views = {0: 'oblique', 1: 'front', 2: 'side', 3: 'top'};
  /** @type {Object<string, number[]>} */
  const moves = {ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step], ',': [0, 0, 5], '.': [0, 0, -5]};
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  if (moves[e.key]) move(moves[e.key][0], moves[e.key][1], moves[e.key][2]);
  else if (views[e.key]) setView(views[e.key]);
  else if (e.key === ' ') closing.play();
  else if (e.key === 'c') closing.cones();
  else return;
  e.preventDefault();
});

// ---- the project

/** Fetches the project and shows it. */
async function load() {
  const before = page.project;
  /** @type {import('./types.js').Project} */
  const p = await get('/api/project');
  page.project = p;
  $('folder').textContent = p.folder;
  $('notice').replaceChildren(...(p.faults ? [fault('the project has faults; nothing is computed', p.faults)] : []));
  $('notice').firstChild?.setAttribute('id', 'project-fault');
  if (p.faults) return;
  $('hand-name').textContent = p.hand;
  $('need-name').textContent = p.need;
  $('version').textContent = 'Version ' + p.version;
  $('inputs').textContent = 'inputs ' + p.revision.slice(0, 8);
  $('undo').disabled = p.undos === 0;
  $('redo').disabled = p.redos === 0;
  $('parquet').hidden = !p.parquet;
  $('parquet-how').hidden = p.parquet;
  const saved = () => { load(); };
  await Promise.all([needSection(p, saved), handSection(p, saved)]);
  $('object').replaceChildren(...p.objects.map(o => el('option', {}, o.name)));
  const o = p.objects.find(one => one.name === page.place.object) ?? p.objects[0];
  page.place.object = o.name;
  if (!p.grips.some(g => g.name === page.place.grip)) page.place.grip = o.grips[0];
  if (!closing.stage) {
    closing.stage = new Stage($('stage'), (dx, dy) => move(dx, dy));
    setView('oblique');
  }
  closing.stage.setHand(p.bodies);
  fields();
  writeAddress(page.place);
  map.chosen();
  feel.again();
  if (before && before.revision !== p.revision) {
    if (!before.faults) showChange(before, p);
    map.again();
    trials.old();
  }
  await closing.compute(true, !page.closing);
  if ($('map-tip').querySelector('.tip')) map.tip();
}

/** @param {string} path of a change */
async function step(path) {
  closeField();
  try {
    await post(path);
    await load();
  } catch (e) {
    $('notice').replaceChildren(fault('not done', e.message));
  }
}
$('undo').addEventListener('click', () => step('/api/undo'));
$('redo').addEventListener('click', () => step('/api/redo'));
$('print').addEventListener('click', () => print());
$('help-open').addEventListener('click', () => $('help').showModal());
document.addEventListener('keydown', e => {
  if (/** @type {Element} */ (e.target).matches?.('input,select,textarea')) return;
  if (e.key === '?') $('help').showModal();
  if ((e.ctrlKey || e.metaKey) && e.key === 'z') { e.preventDefault(); step('/api/undo'); }
  if ((e.ctrlKey || e.metaKey) && e.key === 'y') { e.preventDefault(); step('/api/redo'); }
});

// ---- the strip, and what is folded

document.addEventListener('click', e => {
  const a = /** @type {HTMLElement|null} */ (/** @type {Element} */ (e.target).closest?.('[data-q],[data-goto]'));
  if (!a) return;
  e.preventDefault();
  $('q' + (a.dataset.q ?? a.dataset.goto)).scrollIntoView();
  if (a.dataset.goto === '3') closing.play();
});
const inView = new IntersectionObserver(entries => {
  for (const e of entries) {
    if (e.isIntersecting) {
      page.place.q = Number(e.target.id.slice(1));
      document.querySelectorAll('.strip a').forEach(a => {
        if (/** @type {HTMLElement} */ (a).dataset.q === String(page.place.q)) a.setAttribute('aria-current', 'true');
        else a.removeAttribute('aria-current');
      });
      if (page.project && !page.project.faults) writeAddress(page.place);
    }
  }
}, {rootMargin: '-25% 0px -70% 0px'});

document.querySelectorAll('details[id]').forEach(node => {
  const d = /** @type {HTMLDetailsElement} */ (node);
  d.open = localStorage.getItem('open ' + d.id) === 'yes';
  d.addEventListener('toggle', () => localStorage.setItem('open ' + d.id, d.open ? 'yes' : 'no'));
});

// ---- news

/** Name of the server that runs. @type {string|null} */
let instance = null;
let lost = false;

/** Listens to the server; comes back by itself when it was away. */
function listen() {
  const events = new EventSource('/api/events');
  events.addEventListener('hello', async e => {
    const hello = JSON.parse(e.data);
    if (lost) $('notice').replaceChildren();
    const other = instance !== null && instance !== hello.instance;
    if (other) await newToken();
    const behind = lost || page.project?.revision !== hello.revision;
    instance = hello.instance;
    lost = false;
    if (behind) await load();
    if (other) {
      trials.resume();
      map.resume();
    }
  });
  events.addEventListener('project', e => {
    if (JSON.parse(e.data).revision !== page.project?.revision) load();
  });
  events.addEventListener('map', e => map.news(JSON.parse(e.data)));
  events.addEventListener('trials', e => trials.news(JSON.parse(e.data)));
  events.onerror = () => {
    if (!lost) $('notice').replaceChildren(fault('no server', 'The bench does not answer. This page tries again by itself and goes on where it was; start it with: gripwright bench ' + (page.project?.folder ?? 'DIR')));
    $('notice').firstChild?.setAttribute('id', 'lost');
    lost = true;
    if (events.readyState === EventSource.CLOSED) setTimeout(() => { events.close(); listen(); }, 1000);
  };
}

/**
 * Goes to the question of the address and keeps it in place while what stands above it is still being drawn, for two
 * seconds or until somebody does anything.
 * @param {HTMLElement} question
 */
function stay(question) {
  const settling = new ResizeObserver(() => question.scrollIntoView({behavior: 'instant'}));
  settling.observe($('sheet'));
  const leave = () => settling.disconnect();
  for (const deed of ['wheel', 'pointerdown', 'keydown', 'touchstart']) window.addEventListener(deed, leave, {once: true, passive: true});
  setTimeout(leave, 2000);
}

readAddress(page.place);
window.addEventListener('hashchange', () => {
  readAddress(page.place);
  go({more: page.place.more});
  now.again();
});
const first = page.place.q;
const jump = /^#q\d/.test(location.hash);
await load().catch(e => $('notice').replaceChildren(fault('not loaded', e.message)));
if (jump) stay($('q' + first));
document.querySelectorAll('section[id]').forEach(s => inView.observe(s));
listen();
document.documentElement.dataset.ready = 'true';
