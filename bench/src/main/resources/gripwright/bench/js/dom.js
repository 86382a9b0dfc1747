// Small helpers for elements, marks and numbers.

/**
 * The element with an id.
 * @param {string} id
 * @returns {any}
 */
export const $ = id => document.getElementById(id);

/**
 * An element with attributes and children.
 * @param {string} name
 * @param {Object<string, any>} [attributes] a listener for a key that starts with "on"
 * @param {...(Node|string)} children
 * @returns {any}
 */
export function el(name, attributes = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) node.addEventListener(key.slice(2), value);
    else if (value === true) node.setAttribute(key, '');
    else if (value !== false && value != null) node.setAttribute(key, value);
  }
  node.append(...children);
  return node;
}

/**
 * The same for SVG.
 * @param {string} name
 * @param {Object<string, any>} [attributes]
 * @param {...(Node|string)} children
 * @returns {any}
 */
export function svg(name, attributes = {}, ...children) {
  const node = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, String(value));
  node.append(...children);
  return node;
}

/**
 * The mark of an outcome; its word always stands beside it.
 * @param {string} key
 * @param {number} [size]
 * @returns {Element}
 */
export const mark = (key, size = 16) =>
  svg('svg', {class: 'mark', width: size, height: size, viewBox: '0 0 16 16', 'aria-hidden': 'true'}, svg('use', {href: '#mk-' + key}));

/**
 * A number for people: a true minus, at most so many decimals.
 * @param {number} value
 * @param {number} [decimals]
 * @returns {string}
 */
export const num = (value, decimals = 1) =>
  String(+Number(value).toFixed(decimals)).replace('-', '\u2212');

/**
 * A share as whole percents; never 100 where one run went the other way.
 * @param {number} share
 * @returns {string}
 */
export const percent = share => (share > 0.995 && share < 1 ? 'over 99' : num(100 * share, 0)) + '\u00a0%';

/**
 * A fault where the user is looking; text keeps its lines.
 * @param {string} tag
 * @param {string} text
 * @returns {any}
 */
export function fault(tag, text) {
  const lines = String(text);
  return el('div', {class: 'fault', role: 'alert'}, el('span', {class: 'tag'}, tag),
    lines.includes('\n') ? el('pre', {}, lines) : lines);
}

/**
 * A colour of the page.
 * @param {string} name of the variable, without dashes
 * @returns {string}
 */
export const css = name => getComputedStyle(document.documentElement).getPropertyValue('--' + name).trim();

/**
 * A wide table that can be scrolled by itself, also from the keyboard.
 * @param {string} label
 * @param {Element} table
 * @returns {Element}
 */
export const scrolled = (label, table) => el('div', {class: 'tscroll', tabindex: '0', role: 'region', 'aria-label': label}, table);

/**
 * Offers a text as a file.
 * @param {string} name
 * @param {string} content
 */
export function offer(name, content) {
  const a = el('a', {href: URL.createObjectURL(new Blob([content], {type: 'text/csv'})), download: name});
  a.click();
  URL.revokeObjectURL(a.href);
}

/**
 * The words of a table as comma-separated values.
 * @param {HTMLTableElement} table
 * @returns {string}
 */
export function csv(table) {
  const quote = s => (/[",\n]/.test(s) ? '"' + s.replaceAll('"', '""') + '"' : s);
  const words = cell => cell.textContent.trim().replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');
  return [...table.rows].map(row => [...row.cells].map(c => quote(words(c))).join(',')).join('\r\n') + '\r\n';
}
