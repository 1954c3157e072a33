import { riseLevel } from '../analyse/index.ts';
import type { Bench } from '../model/index.ts';

/** Every setting and method a reduction depends on. */
export function reductionSettings(bench: Bench): Record<string, unknown> {
  const { nondetect_bound, cross_lab, feed, reference_levels, confidence, uncertainty } =
    bench.settings;
  return {
    nondetect_bound,
    cross_lab,
    feed,
    reference_levels: reference_levels ?? [],
    confidence,
    uncertainty: {
      ...uncertainty,
      order: ['stated by the lab', 'pooled from duplicates', 'assumed'],
      assumed: 'repeatability_fraction of Horwitz-Thompson',
      near_limit: 'detection limit / 3.14, else reporting limit / 10, joins in quadrature',
    },
    replicates: 'arithmetic mean, bound by bound',
    interval: 'Fieller, cut at complete removal',
    bounds: 'interval arithmetic over the limits of the true values behind the readings',
    rise: {
      test: 'one-sided difference of feed and product',
      level: riseLevel(confidence),
      many_pairs: 'Benjamini-Hochberg over all pairs and claims of the bench',
    },
  };
}
