import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { exampleJob, memoryStore } from '@panewright/contract';
import { type Compute, inProcess, makeServer } from '@panewright/server';
import { afterAll, expect, test } from 'vitest';

const ports = memoryStore(() => '2026-11-25T09:00:00.000Z');
const web = mkdtempSync(join(tmpdir(), 'panewright-web-'));
mkdirSync(join(web, 'assets'));
writeFileSync(join(web, 'index.html'), '<!doctype html><title>page</title>');
writeFileSync(join(web, 'assets', 'main-1a2b.js'), 'export {};');
writeFileSync(join(web, 'assets', 'trace.worker-1a2b.js'), 'export {};');
afterAll(() => rmSync(web, { recursive: true, force: true }));

const server = makeServer({ ports, compute: inProcess, web });
const local = { host: '127.0.0.1:4750', 'content-type': 'application/json' };
const post = (name: string, body: unknown, headers: Record<string, string> = {}) =>
  server.inject({
    method: 'POST',
    url: `/api/${name}`,
    headers: { ...local, ...headers },
    payload: JSON.stringify(body),
  });
const get = (url: string, headers: Record<string, string> = {}) =>
  server.inject({ method: 'GET', url, headers: { host: '127.0.0.1:4750', ...headers } });

test('a job is made, saved, listed and opened again', async () => {
  const made = await post('newJob', { id: 'n1', name: 'New', units: 'mm' });
  expect(made.statusCode).toBe(200);
  expect((await post('saveJob', { job: made.json(), basedOn: null })).json()).toMatchObject({ revision: 1 });
  expect((await post('listJobs', {})).json()).toMatchObject({ jobs: [{ id: 'n1', revision: 1 }] });
  expect((await post('openJob', { id: 'n1' })).json()).toMatchObject({ job: made.json(), revision: 1 });
});

test('a save that comes too late is a conflict, in data and in words', async () => {
  await post('saveJob', { job: exampleJob, basedOn: null });
  await post('saveJob', { job: exampleJob, basedOn: 1 });
  const late = await post('saveJob', { job: exampleJob, basedOn: 1 });
  expect(late.statusCode).toBe(409);
  expect(late.json()).toMatchObject({ refusal: { code: 'REVISION_STALE', basedOn: 1, newest: 2 } });
  expect(late.json().say.what).toContain('was saved elsewhere since');
  const spanish = await post('saveJob', { job: exampleJob, basedOn: 1 }, { 'accept-language': 'es' });
  expect(spanish.json().say.what).toContain('se guardó entretanto en otro sitio');
});

// The attack: a name of the attacker's is made to point at this machine, so that the browser takes the page for ours.
test.each([
  ['a name that is not this machine’s', { host: 'shop.example' }, 'HOST_NOT_ALLOWED'],
  ['a name that begins like ours', { host: '127.0.0.1.shop.example:4750' }, 'HOST_NOT_ALLOWED'],
  ['a page from elsewhere', { origin: 'https://elsewhere.example' }, 'ORIGIN_NOT_ALLOWED'],
  ['a page of another port', { origin: 'http://127.0.0.1:9999' }, 'ORIGIN_NOT_ALLOWED'],
  ['a page without an origin of its own', { origin: 'null' }, 'ORIGIN_NOT_ALLOWED'],
])('%s is turned away', async (_, headers, code) => {
  const answer = await post('listJobs', {}, headers as Record<string, string>);
  expect(answer.statusCode).toBe(403);
  expect(answer.json()).toMatchObject({ refusal: { code } });
});

test.each(['127.0.0.1:4750', 'localhost:4750', 'LOCALHOST', '[::1]:4750'])(
  '%s is this machine',
  async (host) => {
    expect((await get('/api/health', { host })).statusCode).toBe(200);
  },
);

test('its own page may ask', async () => {
  expect((await post('listJobs', {}, { origin: 'http://127.0.0.1:4750' })).statusCode).toBe(200);
});

test('a body of another type is refused: a form of another site cannot send JSON', async () => {
  const answer = await post('listJobs', {}, { 'content-type': 'text/plain' });
  expect(answer.statusCode).toBe(415);
  expect(answer.json()).toMatchObject({ refusal: { code: 'BODY_NOT_JSON', found: 'text/plain' } });
});

test('a body that is too long is refused before it is read', async () => {
  const answer = await post('check', 'x'.repeat(10_000_001));
  expect(answer.statusCode).toBe(413);
  expect(answer.json()).toMatchObject({ refusal: { code: 'TEXT_TOO_LONG' } });
});

test('every answer forbids scripts from elsewhere and framing', async () => {
  for (const answer of [await get('/'), await get('/api/health'), await get('/api/nothing')]) {
    expect(answer.headers['content-security-policy']).toContain("default-src 'self'");
    expect(answer.headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
  }
});

test('only the worker that traces photos may make code out of text', async () => {
  const may = async (url: string) =>
    String((await get(url)).headers['content-security-policy']).includes(" 'unsafe-eval'");
  expect(await may('/assets/trace.worker-1a2b.js')).toBe(true);
  for (const url of [
    '/',
    '/assets/main-1a2b.js',
    '/jobs/trace.worker-1a2b',
    '/assets/trace.worker-1a2b.js/x',
  ])
    expect(await may(url)).toBe(false);
});

test('the page answers for every path a person may open, and named files are kept', async () => {
  for (const url of ['/', '/jobs/demo-camper', '/jobs/demo-camper/openings/W1']) {
    const answer = await get(url);
    expect(answer.statusCode).toBe(200);
    expect(answer.body).toContain('<title>page</title>');
    expect(answer.headers['cache-control']).toBe('no-cache');
  }
  expect((await get('/assets/main-1a2b.js')).headers['cache-control']).toContain('immutable');
  expect((await get('/assets/none.js')).statusCode).toBe(404);
  expect((await get('/../package.json')).statusCode).toBe(404);
});

test('what is not there is said', async () => {
  const answer = await post('nothing', {});
  expect(answer.statusCode).toBe(404);
  expect(answer.json()).toMatchObject({ refusal: { code: 'PATH_UNKNOWN', path: '/api/nothing' } });
});

test('a fault of ours is a 500 that says nothing of the inside', async () => {
  const faults: Error[] = [];
  const broken: Compute = { run: () => Promise.reject(new Error('inside')), close: async () => {} };
  const other = makeServer({ ports, compute: broken, onFault: (error) => faults.push(error) });
  const answer = await other.inject({ method: 'POST', url: '/api/plan', headers: local, payload: '{}' });
  expect(answer.statusCode).toBe(500);
  expect(answer.body).not.toContain('inside');
  expect(faults).toHaveLength(1);
});

test('whoever asks for lines is told how far the work is, then answered the same', async () => {
  const input = { job: exampleJob, effort: 0, date: '2026-11-25' };
  const lines = await post('sheets', input, { accept: 'application/x-ndjson' });
  expect(lines.headers['content-type']).toContain('application/x-ndjson');
  const said = lines.body
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  const [last, ...told] = said.toReversed();
  expect(told.length).toBeGreaterThan(5);
  for (const one of told) expect(Object.keys(one)).toEqual(['done', 'of', 'stage']);
  expect(last).toEqual({ status: 200, body: (await post('sheets', input)).json() });
  const refused = await post('sheets', { ...input, printer: 'attic' }, { accept: 'application/x-ndjson' });
  expect(JSON.parse(refused.body)).toMatchObject({
    status: 422,
    body: { refusal: { code: 'SHEETS_REFUSED' } },
  });
});
