/**
 * Passwords of ten characters and more that are tried first: pieces that people put together, from what is common knowledge of leaked lists, not a
 * published list (NIST SP 800-63B, 3.1.1.2 asks that common, expected and compromised ones be refused).
 */
const words = [
  ...[
    'password',
    'passwort',
    'passw0rd',
    'p@ssword',
    'p@ssw0rd',
    'pa55word',
    'letmein',
    'welcome',
    'changeme',
    'iloveyou',
    'admin',
    'administrator',
  ],
  ...[
    'qwerty',
    'qwertz',
    'azerty',
    'qwertyuiop',
    'asdfghjkl',
    'zxcvbnm',
    '1q2w3e4r5t',
    '1qaz2wsx',
    '1qaz2wsx3edc',
    'qazwsxedc',
    'q1w2e3r4t5',
  ],
  ...[
    'football',
    'baseball',
    'basketball',
    'superman',
    'batman',
    'starwars',
    'princess',
    'sunshine',
    'shadow',
    'dragon',
    'monkey',
    'master',
  ],
  ...['michael', 'jennifer', 'charlie', 'liverpool', 'chelsea', 'arsenal', 'manchester', 'whatever', 'trustno1', 'computer', 'internet'],
  ...['secret', 'default', 'guest', 'root', 'test', 'testing', 'login', 'user', 'temp', 'summer', 'winter', 'spring', 'autumn', 'january'],
  ...[
    'cartwright',
    'warehouse',
    'rigging',
    'loudspeaker',
    'correcthorsebatterystaple',
    'abcdefghij',
    '1234567890',
    '0987654321',
    'abc',
    'my',
    'the',
  ],
];

/** Rows of the keyboard, letters and digits in order, there and back. */
const runs = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890123456789',
  'qwertyuiop',
  'asdfghjkl',
  'zxcvbnm',
  'qwertzuiop',
  'azertyuiop',
].flatMap((each) => [each, [...each].reverse().join('')]);

const known = new Set(words);

/** Whether a password is one that is guessed first: a run, a piece again and again, or common words with digits and signs around them. */
export function isCommonPassword(password: string): boolean {
  const text = password.toLowerCase();
  const plain = text.replaceAll(/[^a-z0-9@]/g, '');
  if (isRepeat(text) || /^\d{1,15}$/.test(plain)) return true;
  if (runs.some((run) => run.includes(text))) return true;
  return isMadeOf(text.replaceAll(/[^a-z]+$|^[^a-z]+/g, '')) || isMadeOf(plain);
}

/** A piece of at most five characters, again and again, the last one cut off or not. */
function isRepeat(text: string): boolean {
  for (let length = 1; length <= 5; length++) if ([...text].every((each, at) => each === text[at % length])) return true;
  return false;
}

/** One or two of the words, and nothing else. */
const isMadeOf = (text: string): boolean =>
  text !== '' && (known.has(text) || words.some((word) => text.startsWith(word) && known.has(text.slice(word.length))));
