import { benchCells } from './cells.bench.ts';
import { benchForecast } from './forecast.bench.ts';
import { benchLife } from './life.bench.ts';
import { benchPlan } from './plan.bench.ts';

/** Every benchmark, one after the other, on a machine that does nothing else. */
benchLife();
benchForecast();
benchCells();
void benchPlan();
