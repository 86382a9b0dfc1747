// Requests to the server. A refusal becomes an Error with the server's words.

let token = document.querySelector('meta[name=gripwright-token]')?.getAttribute('content') ?? '';

export class Refused extends Error {
  /** @param {string} message @param {any} more @param {number} status */
  constructor(message, more, status) {
    super(message);
    this.more = more;
    this.status = status;
  }
}

async function checked(response) {
  if (response.ok) return response;
  const body = await response.json().catch(() => ({error: 'the server answered ' + response.status}));
  throw new Refused(body.error, body.more, response.status);
}

/** JSON of a path, or null where the answer is empty (a newer request won). */
export async function get(path, query = {}, signal = undefined) {
  const search = new URLSearchParams(query).toString();
  const response = await checked(await fetch(path + (search ? '?' + search : ''), {signal}));
  return response.status === 204 ? null : response.json();
}

export async function text(path) {
  return (await checked(await fetch(path))).text();
}

/** Asks for a change. The token proves that it is this page that asks. */
export async function post(path, body = {}) {
  const response = await fetch(path, {
    method: 'POST',
    headers: {'Content-Type': 'application/x-www-form-urlencoded', 'X-Gripwright-Token': token},
    body: new URLSearchParams(body).toString(),
  });
  return (await checked(response)).json();
}

/** After a restart of the server its token is another. */
export async function newToken() {
  token = (await get('/api/hello')).token;
}
