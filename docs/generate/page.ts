import { Marked } from 'marked';

/** The address of a heading inside its page: the way in which the Markdown files link to it already. */
export function headingAddress(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replace(/ /g, '-');
}

const CODES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => CODES[sign]!);

/** Links from one Markdown file to another are links from page to page. */
const pageLink = (href: string): string =>
  /^[a-z]+:/i.test(href)
    ? href
    : href.replace(/\.md(?=#|$)/, '.html').replace(/(^|\/)LICENSE$/, '$1licence.html');

const markdown = new Marked({
  renderer: {
    heading({ tokens, depth, text }) {
      return `<h${depth} id="${headingAddress(text)}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
    },
    link({ href, tokens }) {
      return `<a href="${escaped(pageLink(href))}">${this.parser.parseInline(tokens)}</a>`;
    },
    table(token) {
      const row = (
        cells: readonly { readonly tokens: (typeof token.header)[number]['tokens'] }[],
        tag: string,
      ) =>
        `<tr>${cells.map((each) => `<${tag}>${this.parser.parseInline(each.tokens)}</${tag}>`).join('')}</tr>`;
      const body = token.rows.map((cells) => row(cells, 'td')).join('\n');
      // A wide table scrolls in a place of its own, which the keyboard can reach.
      return `<div class="wide" tabindex="0" role="region" aria-label="Table"><table><thead>${row(token.header, 'th')}</thead><tbody>${body}</tbody></table></div>\n`;
    },
  },
});

/** A Markdown file as a page that stands alone beside its style sheet. */
export function page(text: string): string {
  const title = /^# (.+)$/m.exec(text)?.[1] ?? 'Crankbook';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="page.css">
</head>
<body>
<main>
${markdown.parse(text, { async: false })}</main>
</body>
</html>
`;
}
