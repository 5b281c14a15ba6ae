import { describe, expect, it } from 'vitest';
import { headersFor, parseHeaders } from '../../../src/headers.ts';

const FILE = `# comment

/*
  Content-Security-Policy: default-src 'self'; img-src 'self' data:
  Permissions-Policy: camera=()
/preview/*
  Permissions-Policy: camera=(self)
/exact.txt
  X-Only:   here
`;

describe('_headers', () => {
  const rules = parseHeaders(FILE);

  it('keeps values with colons, spaces and quotes', () => {
    expect(headersFor(rules, '/any/page/').get('content-security-policy')).toBe(
      "default-src 'self'; img-src 'self' data:",
    );
  });

  // RFC 9110, section 5.3: field lines of one name may be joined by a comma, in order.
  it('joins the values of all matching blocks in order', () => {
    expect(headersFor(rules, '/preview/').get('permissions-policy')).toBe(
      'camera=(), camera=(self)',
    );
    expect(headersFor(rules, '/note/').get('permissions-policy')).toBe('camera=()');
  });

  it('matches a pattern without a star exactly, its dots literally', () => {
    expect(headersFor(rules, '/exact.txt').get('x-only')).toBe('here');
    expect(headersFor(rules, '/exactatxt').has('x-only')).toBe(false);
    expect(headersFor(rules, '/exact.txt/more').has('x-only')).toBe(false);
  });

  it.each([
    ['a header before any path', '  X-A: 1\n', 1],
    ['a header without a value', '/*\n  X-A:\n', 2],
    ['a header that is not indented', '/*\nX-A: 1\n', 2],
  ])('refuses %s and names the line', (_, text, line) => {
    expect(() => parseHeaders(text)).toThrow(`line ${String(line)}`);
  });
});
