import type { Refusal } from '@panewright/contract';
import type { FastifyRequest } from 'fastify';

const LOCAL = ['127.0.0.1', 'localhost', '[::1]'];

/** Name without port: `localhost:4750` -> `localhost`. */
const hostName = (host: string): string => host.replace(/:\d+$/, '').toLowerCase();

/**
 * Why a request is turned away before it is read, or undefined. A page elsewhere can point a name of its own at this
 * machine (DNS rebinding) or post to it; neither has our Host and Origin.
 */
export function turnAway(request: FastifyRequest, moreHosts: readonly string[]): Refusal | undefined {
  const host = request.headers.host ?? '';
  if (!LOCAL.includes(hostName(host)) && !moreHosts.includes(hostName(host)))
    return { code: 'HOST_NOT_ALLOWED', host };
  const { origin } = request.headers;
  if (origin !== undefined && !sameHost(origin, host)) return { code: 'ORIGIN_NOT_ALLOWED', origin };
  return undefined;
}

function sameHost(origin: string, host: string): boolean {
  try {
    return new URL(origin).host === host.toLowerCase();
  } catch {
    return false;
  }
}

const policy = (script: string): string =>
  [
    "default-src 'self'",
    `script-src ${script}`,
    "img-src 'self' data: blob:",
    "worker-src 'self' blob:",
    "frame-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': policy("'self' 'wasm-unsafe-eval'"),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/** The worker that traces photos, and nothing else, by the name its build gives it. */
export const TRACE_WORKER = /[\\/]assets[\\/]trace\.worker-[\w-]+\.js$/;

/**
 * The vision library in that worker makes its calls into WebAssembly out of text of its own (new Function). A worker has
 * the policy of its own file: the page and every other worker stay without.
 */
export const TRACE_WORKER_POLICY = policy("'self' 'wasm-unsafe-eval' 'unsafe-eval'");
