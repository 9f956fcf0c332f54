import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { crc32, zipOf } from './zipOf.ts';

const folder = mkdtempSync(join(tmpdir(), 'panewright-zip-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The check value every catalogue of CRCs gives for CRC-32: the digits 1 to 9 give CBF43926.
test('the digits 1 to 9 have the check value of CRC-32', () => {
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
});

// Oracle: the zipfile module of Python, which reads the directory, the sizes and every checksum.
test('an archive is read back by another program, names and bytes alike', () => {
  const files = [
    {
      path: 'work-order.pdf',
      mediaType: 'application/pdf',
      base64: Buffer.from('%PDF-1.7 …').toString('base64'),
    },
    { path: 'patterns/Größe 1.svg', mediaType: 'image/svg+xml', bytes: new TextEncoder().encode('<svg/>') },
    { path: 'empty.txt', mediaType: 'text/plain', bytes: new Uint8Array(0) },
  ];
  const path = join(folder, 'sheets.zip');
  writeFileSync(path, zipOf(files));
  const program = [
    'import json, sys, zipfile',
    'z = zipfile.ZipFile(sys.argv[1])',
    'assert z.testzip() is None',
    'print(json.dumps([[n, z.read(n).hex()] for n in z.namelist()]))',
  ].join('\n');
  const { stdout, status, stderr } = spawnSync('python3', ['-c', program, path], { encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const hex = (text: string) => Buffer.from(text).toString('hex');
  expect(JSON.parse(stdout)).toEqual([
    ['work-order.pdf', hex('%PDF-1.7 …')],
    ['patterns/Größe 1.svg', hex('<svg/>')],
    ['empty.txt', ''],
  ]);
});
