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

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "img-src 'self' data: blob:",
    "worker-src 'self' blob:",
    "frame-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};
