import { describe, expect, it } from 'vitest';
import { specifiedAmps } from '../../src/cranking/specifiedAmps.ts';
import { refusal, valueOf } from '../electrochemistry/outcomes.ts';

describe('specifiedAmps', () => {
  it('answers the 6T AGM whatever the case and the blanks', () => {
    for (const type of ['6T AGM', '6t agm', ' 6TAGM ', '6T  Agm'])
      expect(valueOf(specifiedAmps(type))).toBe(1_100);
  });

  it('invents no figure for another type, and names the one it knows', () => {
    for (const type of ['6T', '6T flooded', '2HN', '']) {
      const [kind, text] = refusal(specifiedAmps(type));
      expect(kind).toBe('notEnoughData');
      expect(text).toContain(`"${type}"`);
      expect(text).toContain('known: "6T AGM"');
      expect(text).toContain('take the amperes from the label');
    }
  });
});
