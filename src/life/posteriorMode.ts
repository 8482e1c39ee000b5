/** A function of (mu, log sigma), as a function of mu for each log sigma: what costs is done once a sigma. */
export type LogDensity = (logSigma: number) => (mu: number) => number;

/** Where a density is largest, and the triangle (Cholesky factor) of its spread there, log sigma first. */
export type Peak = {
  readonly mu: number;
  readonly logSigma: number;
  /** Standard deviation of log sigma. */
  readonly spreadLogSigma: number;
  /** How far mu moves with one such step of log sigma. */
  readonly muWithLogSigma: number;
  /** Standard deviation of mu for a known sigma. */
  readonly spreadMu: number;
};

type Curve = { readonly value: number; readonly slope: number; readonly bend: number };

const STEP = 1e-3;
const MOST_ROUNDS = 60;

/** The peak of a density that has one, from a starting point: Newton's steps in mu inside those in log sigma. */
export function peakOf(density: LogDensity, start: { mu: number; logSigma: number }): Peak {
  let mu = start.mu;
  const profile = (logSigma: number): number => {
    const along = density(logSigma);
    mu = climb(along, mu, 1);
    return along(mu);
  };
  const logSigma = climb(profile, start.logSigma, 0.7);
  const bend = curveAt(profile, logSigma).bend;
  const muWithLogSigma =
    (bestMu(density, logSigma + STEP, mu) - bestMu(density, logSigma - STEP, mu)) / (2 * STEP);
  const along = density(logSigma);
  mu = climb(along, mu, 1);
  const spreadLogSigma = spreadFrom(bend);
  const spreadMu = spreadFrom(curveAt(along, mu).bend);
  return { mu, logSigma, spreadLogSigma, muWithLogSigma: muWithLogSigma * spreadLogSigma, spreadMu };
}

const bestMu = (density: LogDensity, logSigma: number, from: number): number =>
  climb(density(logSigma), from, 1);

const spreadFrom = (bend: number): number => 1 / Math.sqrt(Math.max(-bend, 1e-12));

// Newton's method uphill; no step longer than `longest`, each halved until it rises.
function climb(f: (x: number) => number, start: number, longest: number): number {
  let x = start;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const { value, slope, bend } = curveAt(f, x);
    const wanted = bend < 0 ? -slope / bend : Math.sign(slope) * longest;
    let step = Math.max(-longest, Math.min(longest, wanted));
    while (Math.abs(step) > 1e-9 && !(f(x + step) >= value)) step /= 2;
    x += step;
    if (Math.abs(step) < 1e-7) break;
  }
  return x;
}

function curveAt(f: (x: number) => number, x: number): Curve {
  const [below, value, above] = [f(x - STEP), f(x), f(x + STEP)];
  return { value, slope: (above - below) / (2 * STEP), bend: (above - 2 * value + below) / (STEP * STEP) };
}
