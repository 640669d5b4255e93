import { strToU8, zipSync } from 'fflate';

type Cell = string | number;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
const cellOf = (value: Cell): string =>
  typeof value === 'number' ? `<c><v>${value}</v></c>` : `<c t="inlineStr"><is><t>${escaped(value)}</t></is></c>`;
const sheetOf = (rows: readonly (readonly Cell[])[]): string =>
  `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows
    .map(
      (row, at) =>
        `<row r="${at + 1}">${row.map((cell, column) => cellOf(cell).replace('<c', `<c r="${letter(column)}${at + 1}"`)).join('')}</row>`,
    )
    .join('')}</sheetData></worksheet>`;
const letter = (column: number): string =>
  (column < 26 ? '' : letter(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));

const main = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const relation = (id: number, type: string, target: string): string =>
  `<Relationship Id="rId${id}" Type="${main}/${type}" Target="${target}"/>`;
const relations = (all: readonly string[]): string =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all.join('')}</Relationships>`;

/** A workbook (ECMA-376, the least that is one) of sheets by name, each its rows. */
export function workbook(sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>): Buffer {
  const names = Object.keys(sheets);
  const files: Record<string, string> = {
    '[Content_Types].xml': `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>${names
      .map(
        (_, at) =>
          `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`,
      )
      .join('')}</Types>`,
    '_rels/.rels': relations([relation(1, 'officeDocument', 'xl/workbook.xml')]),
    'xl/workbook.xml': `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${main}"><sheets>${names
      .map((name, at) => `<sheet name="${escaped(name)}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`)
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relations(names.map((_, at) => relation(at + 1, 'worksheet', `worksheets/sheet${at + 1}.xml`))),
    ...Object.fromEntries(names.map((name, at) => [`xl/worksheets/sheet${at + 1}.xml`, sheetOf(sheets[name] ?? [])])),
  };
  return Buffer.from(zipSync(Object.fromEntries(Object.entries(files).map(([path, text]) => [path, strToU8(text)]))));
}
