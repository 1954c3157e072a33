import { describe, it } from 'vitest';
import { horwitzThompsonRelativeSd } from '../../../src/statistics/index.ts';
import { expectClose } from './expect-close.ts';

describe('Thompson (2000), Analyst 125, 385, after Horwitz (1982), from memory', () => {
  const whole = {
    absolute: 0.0005,
    reason: 'the well-known figures are whole percents; 0.8495 stands for a rounded exponent',
  };

  for (const [fraction, sd, name] of [
    [0.1, 0.0283, '10 %: 2.8 % (the printed curve gives 2.8)'],
    [1e-2, 0.04, '1 %: 4 %'],
    [1e-4, 0.08, '100 mg/kg: 8 %'],
    [1e-6, 0.16, '1 mg/kg: 16 %'],
    [1e-9, 0.22, '1 ug/kg: 22 %, not the 45 % of the uncut curve'],
  ] as const) {
    it(`relative standard deviation between laboratories at ${name}`, () => {
      expectClose(horwitzThompsonRelativeSd(fraction), sd, whole);
    });
  }

  it('the three laws meet: 22 % at 0.12 mg/kg and 2.7 % at 13.8 %', () => {
    const joint = { absolute: 0.002, reason: 'the joints are rounded figures in the source' };
    expectClose(horwitzThompsonRelativeSd(1.2e-7), 0.22, joint);
    expectClose(horwitzThompsonRelativeSd(0.138), 0.01 / Math.sqrt(0.138), joint);
    expectClose(horwitzThompsonRelativeSd(0.1380001), 0.0269, joint);
  });
});
