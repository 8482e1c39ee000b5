import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pictures } from '../../docs/generate/pictures.ts';

describe('the pictures of docs/methods.md', () => {
  for (const { file, svg } of pictures()) {
    it(`${file} is drawn from today’s functions`, () => {
      expect(readFileSync(new URL(`../../docs/pictures/${file}`, import.meta.url), 'utf8')).toBe(svg);
    });

    it(`${file} is shown on the page and says what it shows`, () => {
      const page = readFileSync(new URL('../../docs/methods.md', import.meta.url), 'utf8');
      expect(page).toContain(`(pictures/${file})`);
      expect(svg).toMatch(/<title>[A-Z][^<]{20,}<\/title>/);
      expect(svg).not.toContain('NaN');
    });
  }
});
