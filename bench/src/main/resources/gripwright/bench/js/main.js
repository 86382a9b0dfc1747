// The page as a whole: what is in view (it stands in the address), the project, news from the server.
import {Refused, get, newToken, post, text} from './api.js';
import {$, el, fault, mark, num} from './dom.js';
import {close as closeField, edit, editable, valuesTable} from './edit.js';
import {MapView} from './map.js';
import {classWidth, drawPads} from './pads.js';
import {Plots} from './plots.js';
import {Stage} from './stage.js';
import {TrialsView} from './trials.js';

const pageName = crypto.randomUUID();
const LIVE_REST = 90; // after so many milliseconds at rest the whole closing is fetched
/** Measured by the page itself, for whoever wants to know: request to final state drawn [ms]. */
const times = [];

const page = {
  project: null,
  closing: null,
  place: {q: 1, object: '', grip: '', x: 0, y: 0, turn: 0, more: null},
  go,
};

let stage = null;
const plots = new Plots($('plots'), index => showFrame(index, 'plots'));
const map = new MapView(page);
const trials = new TrialsView(page);

// ---- the address

function readAddress() {
  const h = new URLSearchParams(location.hash.replace(/^#(q\d)?&?/, ''));
  const p = page.place;
  p.object = h.get('object') ?? p.object;
  p.grip = h.get('grip') ?? p.grip;
  for (const k of ['x', 'y', 'turn']) {
    const v = Number(h.get(k));
    if (h.has(k) && Number.isFinite(v)) p[k] = v;
  }
  p.more = h.has('more') ? Object.fromEntries(new URLSearchParams(h.get('more'))) : null;
  const q = location.hash.match(/^#q(\d)/);
  if (q) p.q = Number(q[1]);
}

function writeAddress() {
  const {q, object, grip, x, y, turn, more} = page.place;
  const h = new URLSearchParams({object, grip, x: String(+x.toFixed(3)), y: String(+y.toFixed(3)), turn: String(+turn.toFixed(3))});
  if (more) h.set('more', new URLSearchParams(more).toString());
  history.replaceState(null, '', '#q' + q + '&' + h);
}

// ---- a closing

let number = 0;
let rest = 0;
let pendingView = null;

/** Puts a closing in view; fields that are not named stay. Resolves when its final state is drawn. */
async function go(change, live = false) {
  const p = page.place;
  const other = change.object !== undefined && change.object !== p.object || change.grip !== undefined && change.grip !== p.grip;
  if (!('more' in change)) p.more = null;
  Object.assign(p, change);
  fields();
  writeAddress();
  map.chosen();
  clearTimeout(rest);
  await compute(!live, other || !page.closing);
  if (live) rest = setTimeout(() => compute(true, false), LIVE_REST);
}

async function compute(whole, refit) {
  if (!page.project || page.project.faults) return;
  const p = page.place;
  const mine = ++number;
  const started = performance.now();
  const query = {object: p.object, grip: p.grip, x: p.x.toFixed(4), y: p.y.toFixed(4), turn: p.turn.toFixed(4), ...(p.more ?? {}), page: pageName, number: mine};
  pendingView = pendingView || refit;
  $('stage').classList.add('busy');
  try {
    const closing = await get('/api/close', {...query, frames: whole ? 1 : 0});
    if (!closing || mine !== number) return; // a newer request won
    show(closing, pendingView && whole);
    if (whole) pendingView = false;
    times.push(Math.round(performance.now() - started));
    document.documentElement.dataset.times = times.slice(-100).join(' ');
    const files = new URLSearchParams(query);
    $('close-svg').href = '/api/close.svg?' + files;
    $('close-json').href = '/api/close.json?' + files;
    $('place-fault').replaceChildren();
  } catch (e) {
    if (!(e instanceof Refused || e instanceof TypeError && e.message.includes('fetch'))) throw e;
    if (mine === number && e instanceof Refused) $('place-fault').replaceChildren(fault('not closed', e.message));
  } finally {
    if (mine === number) $('stage').classList.remove('busy');
  }
}

function show(closing, refit) {
  page.closing = closing;
  closing.step = closing.complete ? classWidth(closing) : Math.max(page.step ?? 0, classWidth(closing));
  page.step = closing.step;
  verdict(closing);
  stage.setClosing(closing, refit);
  const last = closing.frames.length - 1;
  if (closing.complete) {
    $('scrub').max = last;
    $('scrub').disabled = $('play').disabled = false;
    plots.show(closing, page.project);
    ticks(closing);
  } else {
    $('scrub').disabled = $('play').disabled = true;
  }
  showFrame(last);
}

const PHASES = ['coming in', 'closing', 'lifting'];

function showFrame(index, from) {
  const c = page.closing;
  if (!c?.frames[index]) return;
  const f = c.frames[index];
  stage.show(index);
  drawPads($('pads'), c, index, page.project.bodies);
  if (c.complete) $('scrub').value = index;
  $('scrub').setAttribute('aria-valuetext', `${num(f.t)} newtons, ${PHASES[f.p]}`);
  $('tension').textContent = `${num(f.t)}\u00a0N, ${PHASES[f.p]}`;
  if (from !== 'plots' && c.complete) plots.cursor(index);
}

function verdict(c) {
  const first = c.firstTouches.filter(t => t[2] === 1);
  const words = first.length ? ` First touch: ${first[0][0]} at ${num(first[0][1])}\u00a0N.` : '';
  $('verdict').replaceChildren(mark(c.outcome, 18), ' ', el('b', {id: 'outcome', 'data-outcome': c.outcome}, c.words[0].toUpperCase() + c.words.slice(1) + '.'), ' ', c.reason + words);
  $('a3').replaceChildren(mark(c.outcome, 13), ` ${c.object}, ${c.grip}: ${c.words}`);
}

/** First touches under the scrub bar. */
function ticks(c) {
  const box = $('touches');
  box.replaceChildren();
  const n = Math.max(1, c.frames.length - 1);
  const ends = []; // of each line of names, in percent of the bar
  for (const [name, tension, phase] of c.firstTouches) {
    const i = c.frames.findIndex(f => f.p === phase && f.t >= tension - 1e-3);
    const at = 100 * (i < 0 ? 0 : i) / n;
    let level = ends.findIndex(end => at >= end);
    if (level < 0) level = ends.length;
    ends[level] = at + 8;
    const tick = el('span', {}, name);
    tick.style.left = at + '%';
    tick.style.top = 27 + 14 * level + 'px';
    box.append(tick);
  }
  box.parentElement.style.paddingBottom = 8 + 14 * Math.max(2, ends.length) + 'px';
}

let playing = 0;
function play() {
  cancelAnimationFrame(playing);
  const c = page.closing;
  if (!c?.complete) return;
  const n = c.frames.length;
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
    showFrame(n - 1);
    return;
  }
  const start = performance.now();
  const step = now => {
    if (page.closing !== c) return;
    const i = Math.min(n - 1, Math.floor((now - start) / 2600 * n));
    showFrame(i);
    if (i < n - 1) playing = requestAnimationFrame(step);
  };
  playing = requestAnimationFrame(step);
}

// ---- fields of the placement

function fields() {
  const p = page.place;
  const o = page.project?.objects.find(one => one.name === p.object);
  if (!o) return;
  $('object').value = p.object;
  const grips = page.project.grips.map(g => g.name);
  $('grip').replaceChildren(...grips.map(g => el('option', {value: g}, o.grips.includes(g) ? g : g + ' (not tried)')));
  $('grip').value = p.grip;
  for (const k of ['x', 'y', 'turn']) if (document.activeElement !== $(k)) $(k).value = +p[k].toFixed(2);
  if (stage && stage.objectName !== p.object + page.project.revision) {
    stage.setObject(o.parts);
    stage.objectName = p.object + page.project.revision;
  }
}

for (const k of ['x', 'y', 'turn']) {
  $(k).addEventListener('input', () => {
    const text = $(k).value.trim().replace(',', '.').replace('\u2212', '-');
    const v = Number(text);
    const most = k === 'turn' ? 360 : 300;
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
  const o = page.project.objects.find(one => one.name === object);
  go({object, grip: o.grips.includes(page.place.grip) ? page.place.grip : o.grips[0]});
});
$('grip').addEventListener('change', () => go({grip: $('grip').value}));
$('nominal').addEventListener('click', () => go({x: 0, y: 0, turn: 0}));
$('scrub').addEventListener('input', () => showFrame(Number($('scrub').value)));
$('play').addEventListener('click', play);
document.querySelectorAll('[data-view]').forEach(b => b.addEventListener('click', () => setView(b.dataset.view)));

function setView(name) {
  stage.setView(name);
  document.querySelectorAll('[data-view]').forEach(b => b.setAttribute('aria-pressed', String(b.dataset.view === name)));
}

const move = (dx, dy, turn = 0) => {
  const p = page.place;
  const within = (v, most) => Math.max(-most, Math.min(most, v));
  go({x: within(p.x + dx, 300), y: within(p.y + dy, 300), turn: within(p.turn + turn, 360)}, true);
};

$('stage').addEventListener('keydown', e => {
  const step = e.shiftKey ? 5 : 1;
  const views = {0: 'oblique', 1: 'front', 2: 'side', 3: 'top'};
  const moves = {ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step], ',': [0, 0, 5], '.': [0, 0, -5]};
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  if (moves[e.key]) move(...moves[e.key]);
  else if (views[e.key]) setView(views[e.key]);
  else if (e.key === ' ') play();
  else return;
  e.preventDefault();
});

// ---- the project

async function load() {
  const before = page.project;
  page.project = await get('/api/project');
  const p = page.project;
  $('folder').textContent = p.folder;
  $('notice').replaceChildren(...(p.faults ? [fault('the project has faults; nothing is computed', p.faults)] : []));
  $('notice').firstChild?.setAttribute('id', 'project-fault');
  if (p.faults) return;
  $('hand-name').textContent = p.hand;
  $('need-name').textContent = p.need;
  $('endnote').textContent = `Gripwright ${p.version}. Inputs ${p.revision.slice(0, 12)}. Everything here is computed on this machine; nothing leaves it.`;
  $('undo').disabled = p.undos === 0;
  $('redo').disabled = p.redos === 0;
  await Promise.all([needSection(), handSection()]);
  $('object').replaceChildren(...p.objects.map(o => el('option', {}, o.name)));
  const o = p.objects.find(one => one.name === page.place.object) ?? p.objects[0];
  page.place.object = o.name;
  if (!p.grips.some(g => g.name === page.place.grip)) page.place.grip = o.grips[0];
  if (!stage) {
    stage = new Stage($('stage'), (dx, dy) => move(dx, dy));
    setView('oblique');
  }
  stage.setHand(p.bodies);
  fields();
  writeAddress();
  if (before && before.revision !== p.revision) {
    map.again();
    trials.old();
  }
  await compute(true, !page.closing);
}

const saved = () => load();

const OBJECT_KEYS = ['mass', 'surface', 'squeeze at most', 'weight', 'stands', 'turned'];

async function needSection() {
  const p = page.project;
  const drawing = await text('/api/objects.svg');
  $('objects').innerHTML = drawing;
  const value = key => (p.values[key] === undefined ? el('span', {class: 'none'}, '–') : editable(el('span', {}, p.values[key]), key, p, saved));
  $('need-say').replaceChildren(`${p.objects.length} objects. Each stands within `, value('need.yaml: placement.x'), ' along x and ', value('need.yaml: placement.y'), ' along y of its place, turned by ', value('need.yaml: placement.turn'), '; ', value('need.yaml: wanted.success'), ' of the pick-ups must work.');
  const body = el('tbody');
  for (const o of p.objects) {
    const at = 'need.yaml: objects.' + o.name + '.';
    const sizes = Object.keys(p.values).filter(k => k.startsWith(at) && !OBJECT_KEYS.includes(k.slice(at.length)) && !/\.(at|turned)\[|centre of mass|grips|mesh unit/.test(k) && k !== at + 'from' && k !== at + 'mesh');
    const shape = el('td');
    sizes.forEach((k, i) => shape.append(i ? ', ' : '', k.slice(at.length).replace(/parts\[(\d+)\]\./, '').replaceAll('.', ' ') + ' ', value(k)));
    body.append(el('tr', {}, el('th', {scope: 'row'}, o.name), shape, ...OBJECT_KEYS.slice(0, 4).map(k => el('td', {}, value(at + k))), el('td', {}, o.grips.join(', '))));
  }
  $('objects-table').replaceChildren(el('div', {class: 'tscroll', tabindex: '0', role: 'region', 'aria-label': 'The objects in numbers'}, el('table', {},
    el('caption', {}, 'The same in numbers; what is blue can be changed'),
    el('thead', {}, el('tr', {}, ...['object', 'size', 'mass', 'surface', 'squeeze at most', 'weight', 'grips tried'].map(h => el('th', {scope: 'col'}, h)))), body)));
  $('need-values').replaceChildren(valuesTable('need.yaml: ', p, saved, 'need.yaml'));
  $('a1').textContent = p.objects.length + ' objects';
}

async function handSection() {
  const p = page.project;
  $('hand').innerHTML = await text('/api/hand.svg');
  $('hand').querySelectorAll('[data-key]').forEach(t => {
    if (p.values[t.dataset.key] !== undefined) editable(t, t.dataset.key, p, saved);
  });
  $('hand-say').textContent = `${p.hand}: ${p.fingers.length} fingers, ${p.motors.length === 1 ? 'one motor' : p.motors.length + ' motors'}. Click a blue value to change it in hand.yaml.`;
  $('hand-values').replaceChildren(valuesTable('hand.yaml: ', p, saved, 'hand.yaml'));
  $('assumed').replaceChildren(el('table', {class: 'vals'}, el('tbody', {}, ...p.assumptions.map(([where, what]) => el('tr', {}, el('td', {}, where), el('td', {}, what))))));
  $('a2').textContent = `${p.fingers.length} fingers, ${p.motors.length === 1 ? 'one motor' : p.motors.length + ' motors'}`;
}

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
document.addEventListener('keydown', e => {
  if (e.target.matches?.('input,select,textarea')) return;
  if (e.key === '?') $('help').showModal();
  if ((e.ctrlKey || e.metaKey) && e.key === 'z') { e.preventDefault(); step('/api/undo'); }
  if ((e.ctrlKey || e.metaKey) && e.key === 'y') { e.preventDefault(); step('/api/redo'); }
});

// ---- the strip

document.addEventListener('click', e => {
  const a = e.target.closest?.('[data-q],[data-goto]');
  if (!a) return;
  e.preventDefault();
  $('q' + (a.dataset.q ?? a.dataset.goto)).scrollIntoView();
});
const inView = new IntersectionObserver(entries => {
  for (const e of entries) {
    if (e.isIntersecting) {
      page.place.q = Number(e.target.id.slice(1));
      document.querySelectorAll('.strip a').forEach(a => a.toggleAttribute('aria-current', a.dataset.q === String(page.place.q)));
      document.querySelectorAll('.strip a[aria-current]').forEach(a => a.setAttribute('aria-current', 'true'));
      if (page.project && !page.project.faults) writeAddress();
    }
  }
}, {rootMargin: '-25% 0px -70% 0px'});

// ---- news

function listen() {
  const events = new EventSource('/api/events');
  let instance = null;
  let lost = false;
  events.addEventListener('hello', async e => {
    const hello = JSON.parse(e.data);
    if (lost) $('notice').replaceChildren();
    if (instance && instance !== hello.instance) await newToken();
    if (lost || page.project && page.project.revision !== hello.revision) await load();
    instance = hello.instance;
    lost = false;
  });
  events.addEventListener('project', e => {
    if (JSON.parse(e.data).revision !== page.project?.revision) load();
  });
  events.addEventListener('map', e => map.news(JSON.parse(e.data)));
  events.addEventListener('trials', e => trials.news(JSON.parse(e.data)));
  events.onerror = () => {
    if (!lost) $('notice').replaceChildren(fault('no server', 'The bench does not answer. This page tries again by itself; start it with: gripwright bench ' + (page.project?.folder ?? 'DIR')));
    $('notice').firstChild?.setAttribute('id', 'lost');
    lost = true;
    if (events.readyState === EventSource.CLOSED) setTimeout(() => { events.close(); listen(); }, 1000);
  };
}

readAddress();
window.addEventListener('hashchange', () => {
  readAddress();
  go({more: page.place.more});
});
const first = page.place.q;
const jump = /^#q\d/.test(location.hash);
await load().catch(e => $('notice').replaceChildren(fault('not loaded', e.message)));
if (jump) $('q' + first)?.scrollIntoView({behavior: 'instant'});
document.querySelectorAll('section[id]').forEach(s => inView.observe(s));
listen();
document.documentElement.dataset.ready = 'true';
void edit;
