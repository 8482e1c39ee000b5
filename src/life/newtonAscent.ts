/** A function's value, gradient and Hessian (full rows) at a point. */
export type Surface = {
  readonly value: number;
  readonly gradient: readonly number[];
  readonly hessian: readonly (readonly number[])[];
};

/** Where an ascent ended: the point, the surface there and the inverse of minus its Hessian. */
export type Peak = { readonly point: number[]; readonly value: number; readonly spread: number[][] };

/** How an ascent may go: the longest step in each coordinate, and the points it may not leave. */
export type AscentLimits = {
  readonly longestStep: readonly number[];
  readonly mayEnter: (point: readonly number[]) => boolean;
};

const MOST_STEPS = 100;
const MOST_HALVINGS = 40;
// Twice what the last step gained in log-likelihood; far below anything that shows, far above rounding.
const SETTLED = 1e-14;

/**
 * The maximum of a smooth function by Newton's method: steps are held to a length, halved while they lead
 * down, and turned towards the gradient where the surface is not a hill.
 * @returns the peak, or undefined where there is none within the limits
 */
export function newtonAscent(
  surface: (point: readonly number[]) => Surface,
  start: readonly number[],
  limits: AscentLimits,
): Peak | undefined {
  let point = [...start];
  let here = surface(point);
  for (let step = 0; step < MOST_STEPS && Number.isFinite(here.value); step += 1) {
    const direction = uphill(here);
    const gain = dot(direction, here.gradient);
    const next = advance(surface, point, here, held(direction, limits.longestStep));
    if (next === undefined || !limits.mayEnter(next.point))
      return isFlat(here) ? peakAt(point, here) : undefined;
    const settled = gain <= SETTLED * (1 + Math.abs(here.value)) && isHill(here);
    [point, here] = [next.point, next.surface];
    if (settled) return peakAt(point, here);
  }
  return undefined;
}

/** Solves A x = b for a symmetric positive definite A; undefined where A is not. */
export function solvePositive(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] | undefined {
  const lower = cholesky(matrix);
  if (lower === undefined) return undefined;
  const forward: number[] = [];
  right.forEach((value, row) => forward.push((value - dot(lower[row]!, forward)) / lower[row]![row]!));
  const answer = new Array<number>(right.length).fill(0);
  for (let row = right.length - 1; row >= 0; row -= 1) {
    let sum = forward[row]!;
    for (let below = row + 1; below < right.length; below += 1) sum -= lower[below]![row]! * answer[below]!;
    answer[row] = sum / lower[row]![row]!;
  }
  return answer;
}

/** The inverse of a symmetric positive definite matrix; undefined where it is not. */
export function invertPositive(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const columns = matrix.map((_, column) =>
    solvePositive(
      matrix,
      matrix.map((__, row) => (row === column ? 1 : 0)),
    ),
  );
  return columns.every((column) => column !== undefined) ? columns : undefined;
}

function cholesky(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const lower: number[][] = [];
  for (let row = 0; row < matrix.length; row += 1) {
    const line: number[] = [];
    for (let column = 0; column < row; column += 1) {
      line.push((matrix[row]![column]! - dot(lower[column]!, line)) / lower[column]![column]!);
    }
    const left = matrix[row]![row]! - dot(line, line);
    // Less than rounding leaves of the diagonal: not positive definite, or so near that it can't be told.
    if (!(left > 1e-15 * Math.abs(matrix[row]![row]!))) return undefined;
    lower.push([...line, Math.sqrt(left)]);
  }
  return lower;
}

// Sum over the shorter of the two.
function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  const length = Math.min(a.length, b.length);
  for (let index = 0; index < length; index += 1) sum += a[index]! * b[index]!;
  return sum;
}

const negated = (matrix: readonly (readonly number[])[]): number[][] =>
  matrix.map((row) => row.map((value) => -value));

const isHill = ({ hessian }: Surface): boolean => cholesky(negated(hessian)) !== undefined;

/** Newton's direction; where the surface is no hill, with as much added to its diagonal as makes it one. */
function uphill({ gradient, hessian }: Surface): number[] {
  const plain = negated(hessian);
  const size = Math.max(...plain.map((row, index) => Math.abs(row[index]!)), Number.MIN_VALUE);
  const steepness = plain.map((row, index) => Math.max(Math.abs(row[index]!), 1e-8 * size));
  for (let ridge = 0; ridge < 1e9; ridge = ridge === 0 ? 1e-3 : ridge * 10) {
    const raised = plain.map((row, index) =>
      row.map((value, column) => value + (index === column ? ridge * steepness[index]! : 0)),
    );
    const direction = solvePositive(raised, gradient);
    if (direction !== undefined) return direction;
  }
  return gradient.map((slope) => slope / size);
}

/** The direction, shortened as a whole until no coordinate moves further than it may. */
function held(direction: readonly number[], longest: readonly number[]): number[] {
  const excess = Math.max(1, ...direction.map((move, index) => Math.abs(move) / longest[index]!));
  return direction.map((move) => move / excess);
}

function advance(
  surface: (point: readonly number[]) => Surface,
  point: readonly number[],
  here: Surface,
  direction: readonly number[],
): { point: number[]; surface: Surface } | undefined {
  // A step that only loses to rounding is as good as one that gains.
  const least = here.value - 1e-13 * Math.abs(here.value);
  for (let halving = 0, share = 1; halving < MOST_HALVINGS; halving += 1, share /= 2) {
    const next = point.map((value, index) => value + share * direction[index]!);
    const there = surface(next);
    if (there.value >= least) return { point: next, surface: there };
  }
  return undefined;
}

const isFlat = (here: Surface): boolean =>
  isHill(here) && dot(uphill(here), here.gradient) <= 1e-8 * (1 + Math.abs(here.value));

function peakAt(point: number[], here: Surface): Peak | undefined {
  const spread = invertPositive(negated(here.hessian));
  return spread === undefined ? undefined : { point, value: here.value, spread };
}
