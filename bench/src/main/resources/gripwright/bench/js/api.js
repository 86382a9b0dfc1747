// Requests to the server. A refusal becomes an Error with the server's words.

let token = document.querySelector('meta[name=gripwright-token]')?.getAttribute('content') ?? '';

/** What the server would not do, in its words. */
export class Refused extends Error {
  /**
   * @param {string} message
   * @param {any} more what else the server said
   * @param {number} status
   */
  constructor(message, more, status) {
    super(message);
    this.more = more;
    this.status = status;
  }
}

/**
 * @param {Response} response
 * @returns {Promise<Response>} the same, if it is good
 */
async function checked(response) {
  if (response.ok) return response;
  const body = await response.json().catch(() => ({error: 'the server answered ' + response.status}));
  throw new Refused(body.error, body.more, response.status);
}

/**
 * JSON of a path, or null where the answer is empty (a newer request won).
 * @param {string} path
 * @param {Object<string, any>} [query]
 * @returns {Promise<any>}
 */
export async function get(path, query = {}) {
  const search = new URLSearchParams(query).toString();
  const response = await checked(await fetch(path + (search ? '?' + search : '')));
  return response.status === 204 ? null : response.json();
}

/**
 * Text of a path.
 * @param {string} path
 * @returns {Promise<string>}
 */
export async function text(path) {
  return (await checked(await fetch(path))).text();
}

/**
 * Asks for a change. The token proves that it is this page that asks.
 * @param {string} path
 * @param {Object<string, any>} [body]
 * @returns {Promise<any>}
 */
export async function post(path, body = {}) {
  const response = await fetch(path, {
    method: 'POST',
    headers: {'Content-Type': 'application/x-www-form-urlencoded', 'X-Gripwright-Token': token},
    body: new URLSearchParams(body).toString(),
  });
  return (await checked(response)).json();
}

/**
 * After a restart of the server its token is another.
 * @returns {Promise<void>}
 */
export async function newToken() {
  token = (await get('/api/hello')).token;
}
