import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ownPath, signInAddress } from '../../../src/web/sign-in/sign-in-address.js';
import { waitWords } from '../../../src/web/sign-in/wait-words.js';

describe('where to go after signing in', () => {
  it.each(['/account', '/account?a=b&c=d', '/team/accounts/0190-7f', '/sign-post'])('%s is kept', (path) => {
    expect(ownPath(path)).toBe(path);
  });

  it.each([
    undefined,
    7,
    ['/account'],
    '',
    'start',
    'https://elsewhere.example/',
    '//elsewhere.example',
    '/\\elsewhere.example',
    '/\t/elsewhere.example',
    '/.//elsewhere.example',
    '/a/..//elsewhere.example',
    '/account\r\nset-cookie: a=b',
    'javascript:alert(1)',
    '/sign-in',
    '/sign-in/code',
    '/sign-out',
    `/${'a'.repeat(3000)}`,
  ])('%j leads to the start page', (next) => {
    expect(ownPath(next)).toBe('/');
  });

  it('is on this very host whatever an address says', () => {
    const here = 'https://tidemark.example';
    const piece = fc.constantFrom('/', '\\', '.', '..', ':', '@', 'a', '%2f', '?', '#', '//', 'http:', '\t');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        expect(new URL(ownPath(pieces.join('')), here).origin).toBe(here);
      }),
    );
  });
});

it('the address of the sign-in page names where to go and why', () => {
  expect(signInAddress('/', null)).toBe('/sign-in');
  expect(signInAddress('/a?b=c', 'ended')).toBe('/sign-in?next=%2Fa%3Fb%3Dc&why=ended');
});

it('a wait is told in words and never too short', () => {
  expect([1, 5, 119, 120, 121, 900].map(waitWords)).toEqual([
    '1 second',
    '5 seconds',
    '119 seconds',
    '2 minutes',
    '3 minutes',
    '15 minutes',
  ]);
});
