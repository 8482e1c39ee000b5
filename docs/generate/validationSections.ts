import { checks, notOurs } from '../../tests/published/index.ts';
import { countReferenceSection } from './countReferenceSection.ts';
import { coverageSection } from './coverageSection.ts';
import { lifeReferenceSection } from './lifeReferenceSection.ts';
import { validationDoc } from './validationDoc.ts';

/** Further sections of docs/validation.md in order, each as Markdown under a heading of its own. */
const SECTIONS: readonly (() => string)[] = [lifeReferenceSection, countReferenceSection, coverageSection];

/** The whole of docs/validation.md. */
export function validationText(): string {
  return validationDoc(
    checks,
    notOurs,
    SECTIONS.map((section) => section()),
  );
}
