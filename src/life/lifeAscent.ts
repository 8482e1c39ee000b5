import { likelihoodSlopes } from './lifeLikelihood.ts';
import type { LifeSample } from './lifeSample.ts';
import type { LifeStart } from './lifeStarts.ts';
import type { Peak, Surface } from './newtonAscent.ts';
import { newtonAscent } from './newtonAscent.ts';
import type { StandardLife } from './standardLife.ts';

// Longest moves of mu and log sigma in one step, and the sigmas beyond which shape is as good as infinite or 0.
const LONGEST_MU = 3;
const LONGEST_LOG_SIGMA = 0.7;
const LOG_SIGMA_LIMITS = [Math.log(1e-5), Math.log(100)] as const;

const hasShape = (logSigma: number): boolean =>
  logSigma > LOG_SIGMA_LIMITS[0] && logSigma < LOG_SIGMA_LIMITS[1];

/** The likelihood's summit in (mu, log sigma) above a start; undefined where it rises out of all bounds. */
export function ascend(sample: LifeSample, law: StandardLife, start: LifeStart): Peak | undefined {
  const surface = ([mu, logSigma]: readonly number[]): Surface => {
    const { value, gradient, hessian } = likelihoodSlopes(sample, law, mu!, logSigma!);
    const [muMu, both, logSigmaLogSigma] = hessian;
    return {
      value,
      gradient,
      hessian: [
        [muMu, both],
        [both, logSigmaLogSigma],
      ],
    };
  };
  return newtonAscent(surface, start, {
    longestStep: [LONGEST_MU, LONGEST_LOG_SIGMA],
    mayEnter: ([, logSigma]) => hasShape(logSigma!),
  });
}

/** The summit in mu alone, for a known sigma. */
export function ascendMu(
  sample: LifeSample,
  law: StandardLife,
  logSigma: number,
  start: number,
): Peak | undefined {
  const surface = ([mu]: readonly number[]): Surface => {
    const { value, gradient, hessian } = likelihoodSlopes(sample, law, mu!, logSigma);
    return { value, gradient: [gradient[0]], hessian: [[hessian[0]]] };
  };
  return newtonAscent(surface, [start], { longestStep: [LONGEST_MU], mayEnter: () => true });
}

/**
 * The summit in log sigma among the lives that have a given log age at a given z, mu + sigma z = logAge: the
 * lives that share one quantile.
 */
export function ascendSigma(
  sample: LifeSample,
  law: StandardLife,
  quantile: { readonly logAge: number; readonly z: number },
  start: number,
): Peak | undefined {
  const surface = ([logSigma]: readonly number[]): Surface => {
    const lever = quantile.z * Math.exp(logSigma!);
    const { value, gradient, hessian } = likelihoodSlopes(sample, law, quantile.logAge - lever, logSigma!);
    const slope = gradient[1] - lever * gradient[0];
    const curve = hessian[2] - 2 * lever * hessian[1] + lever * lever * hessian[0] - lever * gradient[0];
    return { value, gradient: [slope], hessian: [[curve]] };
  };
  return newtonAscent(surface, [start], {
    longestStep: [LONGEST_LOG_SIGMA],
    mayEnter: ([logSigma]) => hasShape(logSigma!),
  });
}
