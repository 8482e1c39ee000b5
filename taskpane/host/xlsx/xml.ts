/**
 * The little that saving does to the text of a part: everything that is not changed stays as the other program
 * wrote it, letter by letter.
 */

const PLAIN: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text as it may stand between tags or in an attribute. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => PLAIN[sign]!);
}

/** A text of a cell: signs that no XML may hold are written with the file format's own escape. */
export function escapedCell(text: string): string {
  const marked = text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
  // A scanned label holds such signs.
  const bare = marked.replace(/[\u0000-\u0008\u000b-\u001f\ufffe\uffff]/g, code);
  return escaped(bare);
}

const code = (sign: string): string => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** What a text between tags or in an attribute says. */
export function unescaped(text: string): string {
  return text.replace(
    /&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi,
    (whole, hex: string, decimal: string, name: string) => {
      if (name !== undefined) return NAMED[name] ?? whole;
      return String.fromCodePoint(hex === undefined ? Number(decimal) : parseInt(hex, 16));
    },
  );
}

/** The value of an attribute in the text of a tag. */
export function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag);
  return found === null ? undefined : unescaped(found[1] ?? found[2]!);
}

/** The element with an attribute of its first tag set, or taken out where the value is undefined. */
export function withAttribute(element: string, name: string, value: string | number | undefined): string {
  const head = openingTag(element);
  const there = new RegExp(`\\s${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
  const made = value === undefined ? '' : ` ${name}="${escaped(String(value))}"`;
  const set = there.test(head)
    ? head.replace(there, () => made)
    : head.replace(/\s*\/?>$/, (end) => made + end.trim());
  return set + element.slice(head.length);
}

/** The prefix, with its colon, that a part gives the elements of the language its root is in. */
export function prefixOf(xml: string): string {
  return /<(\w+:)?\w+[\s/>]/.exec(xml.replace(/<[?!][^>]*>/g, ''))?.[1] ?? '';
}

const ATTRIBUTES = `(?:\\s(?:[^>"']|"[^"]*"|'[^']*')*?)?`;

/** A pattern for whole elements of a name that don't hold others of the same name. */
export function elements(name: string): RegExp {
  return new RegExp(`<${name}${ATTRIBUTES}/>|<${name}${ATTRIBUTES}>[\\s\\S]*?</${name}>`, 'g');
}

/** The elements of a name, whole, in order. */
export function elementsIn(xml: string, name: string): string[] {
  return xml.match(elements(name)) ?? [];
}

/** The first tag of an element: its name and attributes. */
export function openingTag(element: string): string {
  return /^<(?:[^>"']|"[^"]*"|'[^']*')*>/.exec(element)?.[0] ?? '';
}

/** Puts an element before the first of those that the format wants after it, else at the end of the root. */
export function insertBefore(xml: string, later: readonly string[], element: string): string {
  const at = xml.search(new RegExp(`<${prefixOf(xml)}(?:${later.join('|')})[\\s/>]`));
  return at < 0 ? insertLast(xml, element) : xml.slice(0, at) + element + xml.slice(at);
}

/** Puts an element at the end of the root, before the list of extensions that always comes last. */
export function insertLast(xml: string, element: string): string {
  const prefix = prefixOf(xml);
  const end = xml.lastIndexOf('</');
  const closes = xml.slice(0, end).trimEnd().endsWith(`</${prefix}extLst>`);
  const at = closes ? xml.lastIndexOf(`<${prefix}extLst`) : end;
  return xml.slice(0, at) + element + xml.slice(at);
}

/** Our own elements under the prefix that the part uses. */
export function prefixed(element: string, prefix: string): string {
  return prefix === '' ? element : element.replace(/<(\/?)(?=[A-Za-z]+[\s/>])/g, `<$1${prefix}`);
}
