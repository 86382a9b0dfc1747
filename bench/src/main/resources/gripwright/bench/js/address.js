// What is in view stands in the address, so that a link shows the same to whoever opens the same folder.

/** @typedef {import('./types.js').Place} Place */

/**
 * Takes over what the address says.
 * @param {Place} place
 */
export function readAddress(place) {
  const h = new URLSearchParams(location.hash.replace(/^#(q\d)?&?/, ''));
  place.object = h.get('object') ?? place.object;
  place.grip = h.get('grip') ?? place.grip;
  for (const k of /** @type {('x'|'y'|'turn')[]} */ (['x', 'y', 'turn'])) {
    const v = Number(h.get(k));
    if (h.has(k) && Number.isFinite(v)) place[k] = v;
  }
  place.more = h.has('more') ? Object.fromEntries(new URLSearchParams(h.get('more') ?? '')) : null;
  place.taxel = h.get('taxel') ?? place.taxel;
  place.log = h.get('log') ?? '';
  const q = location.hash.match(/^#q(\d)/);
  if (q) place.q = Number(q[1]);
}

/**
 * The address of what is in view.
 * @param {Place} place
 * @param {number} [question] another than the present one
 * @returns {string}
 */
export function address(place, question = place.q) {
  const {object, grip, x, y, turn, more, taxel, log} = place;
  const h = new URLSearchParams({object, grip, x: String(+x.toFixed(3)), y: String(+y.toFixed(3)), turn: String(+turn.toFixed(3))});
  if (more) h.set('more', new URLSearchParams(/** @type {any} */ (more)).toString());
  if (taxel) h.set('taxel', taxel);
  if (log) h.set('log', log);
  return '#q' + question + '&' + h;
}

/**
 * Puts it into the address, and into the links of the sections.
 * @param {Place} place
 */
export function writeAddress(place) {
  history.replaceState(null, '', address(place));
  document.querySelectorAll('[data-link]').forEach(a => a.setAttribute('href', address(place, Number(/** @type {HTMLElement} */ (a).dataset.link))));
}
