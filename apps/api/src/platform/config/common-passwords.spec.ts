import { isCommonPassword } from './common-passwords.js';

describe('passwords that are guessed first', () => {
  it.each([
    ...[
      'Password123',
      'password1234!',
      'P@ssw0rd2026',
      'Passwort2027',
      '1234567890',
      '0987654321',
      'qwertyuiop',
      'QWERTYUIOP',
      '1q2w3e4r5t',
    ],
    ...[
      '1qaz2wsx3edc',
      'letmein123',
      'Welcome2026!',
      'iloveyou12',
      'changeme!!',
      'aaaaaaaaaa',
      'abcabcabcabc',
      '12121212121',
      'Summer2026!',
    ],
    ...['adminadmin', 'admin-password', 'cartwright1', 'Warehouse27', '!!!secret!!!', '2027-02-26', '07700900123', 'abcdefghijkl'],
  ])('%s is one', (password) => expect(isCommonPassword(password)).toBe(true));

  it.each([
    ...['given by another', 'chosen by myself', 'first password', 'K7T2-MMWQ-91HX', 'four words on a shelf', 'passing warehouse doors'],
    ...['xk29dkq02mzl', '4815162342108642', 'Ferry Lane, half past six'],
  ])('%s is none', (password) => expect(isCommonPassword(password)).toBe(false));
});
