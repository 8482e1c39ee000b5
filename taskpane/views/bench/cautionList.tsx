import type { Caution } from '../../../src/cranking/cautions.ts';
import { CAUTIONS } from '../../../src/cranking/cautions.ts';

/** The cautions of a step, at the step. */
export function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  return (
    <ul class="cautions">
      {cautions.map((caution) => (
        <li key={caution}>{CAUTIONS[caution]}</li>
      ))}
    </ul>
  );
}
