import { describe, expect, it } from 'vitest';
import { isCommonPassword } from '../../../src/auth/common-passwords.js';
import { checkPassphrase, normalisePassphrase } from '../../../src/domain/account/passphrase.js';

const codes = (passphrase: string, signInName = 'h.turnstone') =>
  checkPassphrase('/passphrase', normalisePassphrase(passphrase), {
    signInName,
    isCommon: isCommonPassword,
  }).map(({ code }) => code);

describe('a passphrase', () => {
  it.each([
    'sandpiper above the mudflat',
    'twelve chars',
    'Ä Ö Ü ß é ñ ø å',
    '潮汐と砂丘と鳥の長い合言葉',
    'x9$kQ!2vLm#7',
    ' leading and trailing ',
  ])('may be "%s"', (passphrase) => {
    expect(codes(passphrase)).toEqual([]);
  });

  it('has 12 to 128 characters, counted as people count them', () => {
    expect(codes('a b c d e f')).toEqual(['passphrase-length']);
    expect(codes('a b c d e f ')).toEqual([]);
    // Eleven birds are 22 units of UTF-16.
    expect(codes('🐦'.repeat(11))).toEqual(['passphrase-length']);
    const long = 'mud and sand '.repeat(10);
    expect(codes(long.slice(0, 128))).toEqual([]);
    expect(codes(long.slice(0, 129))).toEqual(['passphrase-length']);
  });

  it.each([
    ['on the list', '1qaz2wsx3edc'],
    ['on the list, in capitals', 'JUSTINBIEBER'],
    ['a listed one with digits and signs around it', '!password1234!'],
    ['a listed one with a year', 'Dragon--2026!'],
    ['a listed one said again and again', 'monkeymonkey'],
    ['one letter', 'aaaaaaaaaaaaaaaa'],
    ['two letters in turn', 'abababababab'],
    ['wide letters of a listed one', 'ｐａｓｓｗｏｒｄ１２３４'],
  ])('is refused when it is %s', (_name, passphrase) => {
    expect(codes(passphrase)).toEqual(['common-passphrase']);
  });

  it.each(['h.turnstone1', 'my H.Turnstone phrase'])('is refused with the sign-in name in it: %s', (text) => {
    expect(codes(text)).toEqual(['passphrase-holds-name']);
  });

  it('is the same however an accent is typed', () => {
    expect(normalisePassphrase('cafe\u0301')).toBe(normalisePassphrase('caf\u00e9'));
  });
});
