// Small helpers for elements, marks and numbers.

/** @param {string} id @returns {any} */
export const $ = id => document.getElementById(id);

/**
 * An element with attributes and children.
 * @param {string} name @param {Object<string, any>} [attributes] @param {...(Node|string)} children
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

/** The same for SVG. @returns {any} */
export function svg(name, attributes = {}, ...children) {
  const node = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, String(value));
  node.append(...children);
  return node;
}

/** The mark of an outcome; its word always stands beside it. */
export const mark = (key, size = 16) =>
  svg('svg', {class: 'mark', width: size, height: size, viewBox: '0 0 16 16', 'aria-hidden': 'true'}, svg('use', {href: '#mk-' + key}));

/** A number for people: a true minus, at most so many decimals. */
export const num = (value, decimals = 1) =>
  String(+Number(value).toFixed(decimals)).replace('-', '\u2212');

export const percent = share => (share > 0.995 && share < 1 ? 'over 99' : num(100 * share, 0)) + '\u00a0%';

/** A fault where the user is looking; text keeps its lines. */
export function fault(tag, text) {
  const lines = String(text);
  return el('div', {class: 'fault', role: 'alert'}, el('span', {class: 'tag'}, tag),
    lines.includes('\n') ? el('pre', {}, lines) : lines);
}

export const css = name => getComputedStyle(document.documentElement).getPropertyValue('--' + name).trim();
