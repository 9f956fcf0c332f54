import { existsSync } from 'node:fs';
import fastifyStatic from '@fastify/static';
import {
  httpAnswer,
  languageOf,
  MOST_TEXT,
  messagesOf,
  openApi,
  operationNames,
  operations,
  type Ports,
  type Refusal,
  refuse,
} from '@panewright/contract';
import fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import { type Answer, answerText, type Compute, GivenUp } from '../compute/compute.ts';
import { SECURITY_HEADERS, TRACE_WORKER, TRACE_WORKER_POLICY, turnAway } from './guards.ts';
import { streamAnswer, wantsLines } from './streamAnswer.ts';

export interface ServerOptions {
  readonly ports: Ports;
  readonly compute: Compute;
  /** Folder of the built page; without it only /api answers. */
  readonly web?: string;
  /** Host names besides this machine's own that may be asked for. */
  readonly hosts?: readonly string[];
  /** Told of every fault. */
  readonly onFault?: (error: Error) => void;
}

/** The HTTP door: one POST under /api for each operation, the OpenAPI document, and the page. */
export function makeServer(options: ServerOptions): FastifyInstance {
  const { ports, compute, web, hosts = [], onFault } = options;
  const server = fastify({ bodyLimit: MOST_TEXT, forceCloseConnections: true });
  server.removeAllContentTypeParsers();
  server.addContentTypeParser('application/json', { parseAs: 'string' }, (_, body, done) => done(null, body));
  server.addHook('onRequest', async (request, reply) => {
    reply.headers(SECURITY_HEADERS);
    const why = turnAway(request, hosts);
    if (why) return refuseWith(reply, why);
  });
  server.setErrorHandler((error: Error & { code?: string }, request, reply) => {
    const refusal = refusalOf(error, request);
    if (refusal) return refuseWith(reply, refusal);
    return send(reply, faultOf(error, onFault));
  });
  for (const name of operationNames)
    server.post(`/api/${name}`, async (request, reply) => {
      const text = typeof request.body === 'string' ? request.body : '';
      const language = asked(request);
      if (operations[name].needs === 'store')
        return send(reply, await answerText(name, text, { language }, ports));
      const gone = hangUp(reply);
      if (!wantsLines(request)) return send(reply, await compute.run(name, text, gone, { language }));
      return streamAnswer(
        reply,
        (told) => compute.run(name, text, gone, { language, told }),
        (error) => faultOf(error, onFault),
      );
    });
  server.get('/api/openapi.json', async () => openApi());
  server.get('/api/health', async () => ({ ok: true }));
  servePage(server, web);
  return server;
}

/** The language that sentences are asked for in. */
const asked = ({ headers }: FastifyRequest) => languageOf(headers['accept-language']);

const send = (reply: FastifyReply, { status, body }: Answer) =>
  reply.code(status).type('application/json; charset=utf-8').header('cache-control', 'no-store').send(body);

function refuseWith(reply: FastifyReply, refusal: Refusal): FastifyReply {
  const { status, body } = httpAnswer(refuse(refusal), messagesOf[asked(reply.request)]);
  return send(reply, { status, body: JSON.stringify(body) });
}

/** A fault of ours, told to whoever looks after the server. Work that was given up, at either end, is none. */
function faultOf(error: Error & { code?: string }, onFault: ServerOptions['onFault']): Answer {
  const givenUp = error instanceof GivenUp || error.code === 'ERR_STREAM_PREMATURE_CLOSE';
  if (!givenUp) onFault?.(error);
  const fault = 'Something went wrong in this program; nothing was changed by it.';
  return { status: 500, body: JSON.stringify({ fault }) };
}

/** Aborted when the other end is gone before it has its answer. */
function hangUp(reply: FastifyReply): AbortSignal {
  const controller = new AbortController();
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  return controller.signal;
}

function refusalOf(error: Error & { code?: string }, request: FastifyRequest): Refusal | undefined {
  switch (error.code) {
    case 'SQLITE_BUSY':
    case 'SQLITE_BUSY_SNAPSHOT':
      return { code: 'STORE_BUSY' };
    case 'SQLITE_FULL':
      return { code: 'STORE_FULL' };
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return {
        code: 'TEXT_TOO_LONG',
        length: Number(request.headers['content-length'] ?? 0),
        most: MOST_TEXT,
      };
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return { code: 'BODY_NOT_JSON', found: request.headers['content-type'] ?? '' };
    default:
      return undefined;
  }
}

/** Files of the built page; every other path a person may open is the page too, which shows what belongs there. */
function servePage(server: FastifyInstance, web: string | undefined): void {
  const there = web !== undefined && existsSync(web);
  if (there)
    server.register(fastifyStatic, {
      root: web,
      cacheControl: false,
      setHeaders: (response, path) => {
        const named = /[\\/]assets[\\/]/.test(path);
        response.header('cache-control', named ? 'public, max-age=31536000, immutable' : 'no-cache');
        if (TRACE_WORKER.test(path)) response.header('content-security-policy', TRACE_WORKER_POLICY);
      },
    });
  server.setNotFoundHandler((request, reply) => {
    const page = request.method === 'GET' && !request.url.startsWith('/api/') && !/\.\w+$/.test(request.url);
    if (there && page) return reply.header('cache-control', 'no-cache').sendFile('index.html');
    return refuseWith(reply, { code: 'PATH_UNKNOWN', path: request.url });
  });
}
