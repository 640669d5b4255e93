/** A drawing or a sheet as plain data: SVG or HTML elements, rendered to text for paper and to elements on screen. */
export interface Node {
  readonly tag: string;
  /** Attribute names as in SVG and HTML (`class`, `stroke-width`). */
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Node | string)[];
}

export function node(
  tag: string,
  attributes: Record<string, string | number | undefined> = {},
  ...children: (Node | string | null | undefined | readonly (Node | string)[])[]
): Node {
  return {
    tag,
    attributes: Object.fromEntries(
      Object.entries(attributes).filter((entry): entry is [string, string | number] => entry[1] !== undefined),
    ),
    children: children.flat().filter((child): child is Node | string => child !== null && child !== undefined),
  };
}

const empty = new Set(['br', 'hr', 'img', 'input', 'meta', 'link', 'circle', 'line', 'path', 'polygon', 'rect', 'use']);
const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escape = (text: string): string => text.replace(/[&<>"]/g, (each) => escapes[each]!);

/** Markup text; every text and attribute is escaped. */
export function renderMarkup(each: Node | string): string {
  if (typeof each === 'string') return escape(each);
  const attributes = Object.entries(each.attributes)
    .map(([key, value]) => ` ${key}="${escape(String(value))}"`)
    .join('');
  if (empty.has(each.tag) && each.children.length === 0) return `<${each.tag}${attributes}/>`;
  return `<${each.tag}${attributes}>${each.children.map(renderMarkup).join('')}</${each.tag}>`;
}
