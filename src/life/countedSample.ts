import type { LifeSample } from './lifeSample.ts';

/** A sample with its ages in rising order, equal ones counted together. A counted sample is returned as it is. */
export function countedSample(sample: LifeSample): LifeSample {
  if (sample.counted) return sample;
  const failed = sortedAges(sample, ({ failed }, row) => failed[row]! > 0);
  const outlived = sortedAges(sample, ({ outlived }, row) => outlived[row]! > 0);
  const entered = sortedAges(sample, ({ outlived }, row) => outlived[row]! < 0);
  return { ...sample, ...merged(failed, outlived, entered) };
}

// Plain numbers sort far faster than rows: each sort of event by itself, then one walk through the three.
function sortedAges(sample: LifeSample, isMeant: (sample: LifeSample, row: number) => boolean): Float64Array {
  return sample.age.filter((_, row) => isMeant(sample, row)).sort();
}

function merged(failures: Float64Array, outliving: Float64Array, entering: Float64Array) {
  const most = failures.length + outliving.length + entering.length;
  const [age, failed, outlived] = [new Float64Array(most), new Float64Array(most), new Float64Array(most)];
  let size = 0;
  for (let f = 0, o = 0, e = 0; f + o + e < most; size += 1) {
    const next = Math.min(at(failures, f), at(outliving, o), at(entering, e));
    age[size] = next;
    for (; failures[f] === next; f += 1) failed[size]! += 1;
    for (; outliving[o] === next; o += 1) outlived[size]! += 1;
    for (; entering[e] === next; e += 1) outlived[size]! -= 1;
  }
  const kept = age.subarray(0, size);
  const logAge = kept.map(Math.log);
  return {
    age: kept,
    logAge,
    failed: failed.subarray(0, size),
    outlived: outlived.subarray(0, size),
    counted: true,
  };
}

const at = (ages: Float64Array, index: number): number => ages[index] ?? Number.POSITIVE_INFINITY;
